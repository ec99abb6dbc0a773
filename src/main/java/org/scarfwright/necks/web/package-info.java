/** Pages and addresses of designs, orders and the joint calculator. */
@NullMarked
package org.scarfwright.necks.web;

import org.jspecify.annotations.NullMarked;
