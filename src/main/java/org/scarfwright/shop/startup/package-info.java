/** What must be right before the program opens its database, and what it says when it is not. */
@NullMarked
package org.scarfwright.shop.startup;

import org.jspecify.annotations.NullMarked;
