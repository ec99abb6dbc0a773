/** Neck designs and the orders for them. */
@ApplicationModule(allowedDependencies = {"measure", "wood", "joint", "shop", "web"})
@NullMarked
package org.scarfwright.necks;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
