/**
 * The scarf joint: plane geometry of both arrangements. Pure functions.
 *
 * <p><b>Axes.</b> Side view. x runs along the neck toward the tip of the head, the nut is at x = 0; y runs from the neck's back
 * (y = 0) to its top, the fingerboard plane (y = t). The head's front face leaves the nut at (0, t) and falls at the tilt angle a;
 * distances on it are measured along it, from the nut.
 *
 * <p><b>Symbols.</b> a tilt angle; t thickness of the neck piece and h of the head piece when they are glued; N neck length along
 * the top, heel end to nut; H head length along its front face, nut to tip; w and W the widths of the neck piece and of the head;
 * s thickness of a piece at the saw; k saw kerf. Lengths inside a formula are millimetres in a double; a
 * {@link org.scarfwright.measure.Length} leaves it rounded once, up where a job needs it and to the nearest where it is shown.
 *
 * <p><b>Impossible and unusual.</b> Impossible is what has no such polygon: no size at all, an angle that is not between 0° and
 * 90°, a joint that runs off the tip or off the heel. {@link org.scarfwright.joint.ScarfJoint} refuses it. Unusual is what can be
 * drawn and glued but hardly ever should be: a head thicker than the neck, an angle outside 3° to 30°. The geometry computes it,
 * and {@link org.scarfwright.joint.DesignRules} refuses it where a design is entered.
 *
 * <p><b>Source:</b> every formula is derived here from the two planes; the tests rebuild the pieces by clipping half-planes with a
 * geometry library and measure them.
 */
@ApplicationModule(allowedDependencies = {"measure", "wood"})
@NullMarked
package org.scarfwright.joint;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
