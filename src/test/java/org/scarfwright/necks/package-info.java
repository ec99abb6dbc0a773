@NullMarked
package org.scarfwright.necks;

import org.jspecify.annotations.NullMarked;
