package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What a saw's scale leaves uncertain. A scale that can be read to r is set within half of that.
 *
 * <p>Two bevels cut at one setting share its error: they match, and the head only tilts by it. Two bevels cut at two settings, or on
 * two saws, may differ by the whole of r.
 *
 * <p><b>Source:</b> derived here; half a division as the error of a reading is common practice.
 *
 * @param division r, the least difference that can be read on the scale; above 0°
 */
public record ScaleReading(Angle division) {
    /** How far off one setting may be, either way: r / 2, rounded up. */
    public Angle setting() {
        return new Angle((division.millidegrees() + 1) / 2);
    }

    /** How far the tip moves, up or down, when the tilt is off by {@link #setting()}: H × tan(r / 2), to the nearest micrometre. */
    public Length atTip(Length headLength) {
        return Length.nearestMm(headLength.mm() * setting().tan());
    }

    /** How wide the joint may gape when its bevels were cut at two settings: glue face × tan r, to the nearest micrometre. */
    public Length gap(Length glueFace) {
        return Bevel.gap(glueFace, division);
    }
}
