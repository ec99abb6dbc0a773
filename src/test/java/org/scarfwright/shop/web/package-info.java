@NullMarked
package org.scarfwright.shop.web;

import org.jspecify.annotations.NullMarked;
