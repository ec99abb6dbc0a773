/** Pages and addresses of the rack. */
@NullMarked
package org.scarfwright.rack.web;

import org.jspecify.annotations.NullMarked;
