/** Claims about the rack's pages and addresses. */
@NullMarked
package org.scarfwright.rack.web;

import org.jspecify.annotations.NullMarked;
