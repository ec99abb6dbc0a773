/** Reads the published tables that formulae are checked against. */
@NullMarked
package org.scarfwright.published;

import org.jspecify.annotations.NullMarked;
