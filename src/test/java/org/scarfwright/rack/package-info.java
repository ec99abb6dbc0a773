/** Claims about the rack. */
@NullMarked
package org.scarfwright.rack;

import org.jspecify.annotations.NullMarked;
