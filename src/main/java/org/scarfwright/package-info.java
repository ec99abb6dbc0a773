@NullMarked
package org.scarfwright;

import org.jspecify.annotations.NullMarked;
