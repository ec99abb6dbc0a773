/**
 * Exact measures and how people write them.
 *
 * <p><b>Conventions.</b> A stored length is a whole number of micrometres, an angle whole thousandths of a degree, moisture
 * whole hundredths of a percent, money whole hundredths of the shop's currency, a volume whole cubic micrometres. One inch
 * is exactly 25 400 µm, so 1/64 in is 396.875 µm and a fraction rounds once, on entry; what was typed is kept beside it
 * ({@link org.scarfwright.measure.TypedLength}).
 *
 * <p><b>Rounding</b> always names its direction: what a job needs rounds up, what the rack offers rounds down, what is shown
 * rounds to the nearest once, at the edge. A {@code double} lives only inside a formula.
 *
 * <p><b>Limits.</b> A {@code Length} holds up to 9.2e12 m; the rooms set sensible ranges of their own.
 */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.scarfwright.measure;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
