@NullMarked
package org.scarfwright.shop;

import org.jspecify.annotations.NullMarked;
