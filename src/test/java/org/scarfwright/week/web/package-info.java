/** Claims about the week's pages and API. */
@NullMarked
package org.scarfwright.week.web;

import org.jspecify.annotations.NullMarked;
