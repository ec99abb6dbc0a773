/** Which wood becomes which neck: needs, rules, pairings and the plan. */
@ApplicationModule(allowedDependencies = {"measure", "wood", "joint", "shop", "rack", "necks", "web"})
@NullMarked
package org.scarfwright.matching;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
