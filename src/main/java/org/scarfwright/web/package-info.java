/** Layout, errors, drawings and formatters. Knows no feature. */
@ApplicationModule(allowedDependencies = {"measure"})
@NullMarked
package org.scarfwright.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
