/** The scarf joint: plane geometry of both arrangements. Pure functions. */
@ApplicationModule(allowedDependencies = {"measure", "wood"})
@NullMarked
package org.scarfwright.joint;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
