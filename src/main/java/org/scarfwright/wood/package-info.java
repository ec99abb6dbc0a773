/** What is known of a wood and how it moves. Pure functions; the figures come from the species table. */
@ApplicationModule(allowedDependencies = {"measure"})
@NullMarked
package org.scarfwright.wood;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
