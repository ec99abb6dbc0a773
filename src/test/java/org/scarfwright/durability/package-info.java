/** What survives when the program is killed: tests that run the real program as a process of its own. */
@NullMarked
package org.scarfwright.durability;

import org.jspecify.annotations.NullMarked;
