/** The week's pages and its part of the API. */
@NullMarked
package org.scarfwright.week.web;

import org.jspecify.annotations.NullMarked;
