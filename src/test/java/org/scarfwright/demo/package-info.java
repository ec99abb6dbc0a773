/** The demo shop as a whole: its files read cleanly and its week shows what it is made to show. */
@NullMarked
package org.scarfwright.demo;

import org.jspecify.annotations.NullMarked;
