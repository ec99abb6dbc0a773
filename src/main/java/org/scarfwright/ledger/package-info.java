/** What happened to every piece, append-only, with volumes that close. */
@ApplicationModule(allowedDependencies = {"measure", "rack", "web"})
@NullMarked
package org.scarfwright.ledger;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
