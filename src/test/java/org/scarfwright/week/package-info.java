/** Claims about the week on the floor. */
@NullMarked
package org.scarfwright.week;

import org.jspecify.annotations.NullMarked;
