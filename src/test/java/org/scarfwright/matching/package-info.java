/** Tests of the matching room. */
@NullMarked
package org.scarfwright.matching;

import org.jspecify.annotations.NullMarked;
