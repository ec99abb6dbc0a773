package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What one saw could do with one cut: the settings that fit, and how far they reach.
 *
 * <p><b>Source:</b> derived here: a cut through thickness s at angle a is s / sin a long.
 */
public record SawFit(SawNeed need, SawLimits saw) {
    private static final double MILLIDEGREES = 1000;

    /** The thickest piece it cuts at this angle: reach × sin a, rounded down. */
    public Length greatestThickness() {
        return Length.downFromMm(saw.reach().mm() * need.angle().sin());
    }

    /** The widest piece it cuts, on edge. */
    public Length greatestWidth() {
        return saw.depth();
    }

    /** Whether some angle of the saw reaches through this thickness. */
    public boolean reachesThrough() {
        return need.sawnThickness().isShorterThan(saw.reach()) && shallowest().compareTo(saw.steepest()) <= 0;
    }

    /**
     * The shallowest angle at which it cuts through this thickness: the angle whose sine is s / reach, rounded up to a thousandth of
     * a degree, or its own shallowest when that is steeper. A right angle when the thickness is more than its reach.
     */
    public Angle shallowest() {
        double sine = Math.min(1, need.sawnThickness().mm() / saw.reach().mm());
        Angle reached = new Angle((int) Math.ceil(Math.toDegrees(Math.asin(sine)) * MILLIDEGREES - 1e-6));
        return reached.compareTo(saw.shallowest()) > 0 ? reached : saw.shallowest();
    }
}
