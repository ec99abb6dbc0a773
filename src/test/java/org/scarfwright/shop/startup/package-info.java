@NullMarked
package org.scarfwright.shop.startup;

import org.jspecify.annotations.NullMarked;
