/** The shop itself: its rules, its saws and how it starts. */
@ApplicationModule(allowedDependencies = {"measure", "web"})
@NullMarked
package org.scarfwright.shop;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
