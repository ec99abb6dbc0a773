/** The shop's pages and its part of the API. */
@NullMarked
package org.scarfwright.shop.web;

import org.jspecify.annotations.NullMarked;
