/** Walks the pages in a real browser, at the widths of a phone, a tablet and a laptop. */
@NullMarked
package org.scarfwright.browser;

import org.jspecify.annotations.NullMarked;
