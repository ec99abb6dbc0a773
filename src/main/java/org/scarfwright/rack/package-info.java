/** The rack: every piece of wood, what it is and what it can still give. */
@ApplicationModule(allowedDependencies = {"measure", "wood", "shop", "web"})
@NullMarked
package org.scarfwright.rack;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
