/** Pages and addresses of the rack and of its woods. */
@NullMarked
package org.scarfwright.rack.web;

import org.jspecify.annotations.NullMarked;
