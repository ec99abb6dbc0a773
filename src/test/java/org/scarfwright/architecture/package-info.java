/** The borders of the rooms. Every rule has a violator below {@code planted} that it must catch. */
@NullMarked
package org.scarfwright.architecture;

import org.jspecify.annotations.NullMarked;
