@NullMarked
package org.scarfwright.shop.file;

import org.jspecify.annotations.NullMarked;
