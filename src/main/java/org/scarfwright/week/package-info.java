/** The week on the floor: which work on which day. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.scarfwright.week;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
