package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Area;
import org.scarfwright.measure.Length;

/**
 * A bevel cut through a piece at a tilt angle above 0° and below 90°. Lengths a job needs are rounded up to a whole micrometre.
 *
 * <p><b>Source:</b> derived here (right triangle of the piece's thickness and the cut).
 */
public final class Bevel {
    private Bevel() {}

    /** How far the bevel reaches along the piece: s·cot a, rounded up. */
    public static Length run(Length sawnThickness, Angle angle) {
        return Length.upFromMm(sawnThickness.mm() * checked(angle).cot());
    }

    /** How much of the piece's length the saw takes along it: k / sin a, rounded up. */
    public static Length kerfRun(Length kerf, Angle angle) {
        return Length.upFromMm(kerf.mm() / checked(angle).sin());
    }

    /** Length of the cut face, which is also the length of the cut: s / sin a, rounded up. */
    public static Length faceLength(Length sawnThickness, Angle angle) {
        return Length.upFromMm(sawnThickness.mm() / checked(angle).sin());
    }

    /** The long side of a part as sawn: its short side and the run of its bevel. */
    public static Length longSide(Length shortSide, Length sawnThickness, Angle angle) {
        return shortSide.plus(run(sawnThickness, angle));
    }

    /** Side-view area of the wedge that is wasted when a bevel is not shared: s²·cot a / 2, to the nearest square micrometre. */
    public static Area wedgeArea(Length sawnThickness, Angle angle) {
        double s = sawnThickness.mm();
        return new Area(Math.round(s * s * checked(angle).cot() / 2 * 1e6));
    }

    /**
     * How much longer the front of a head piece grows when it is thinned from its front after the bevel was cut, because the
     * bevel reaches furthest at the back: removed·cot a, rounded up. Thinned from its back the front does not change.
     */
    public static Length frontGainedByThinning(Length removed, Angle angle) {
        return run(removed, angle);
    }

    /**
     * How wide a joint gapes at one end when its two bevels differ: glue face times tan of the mismatch, to the nearest micrometre.
     *
     * @param mismatch how much the two bevels differ, from 0° and below 90°
     */
    public static Length gap(Length glueFace, Angle mismatch) {
        if (mismatch.millidegrees() < 0 || mismatch.millidegrees() >= 90_000) {
            throw new IllegalArgumentException("not a mismatch of two bevels: " + mismatch);
        }
        return Length.nearestMm(glueFace.mm() * mismatch.tan());
    }

    private static Angle checked(Angle angle) {
        if (angle.millidegrees() <= 0 || angle.millidegrees() >= 90_000) {
            throw new IllegalArgumentException("a bevel lies between 0° and 90°, not at " + angle);
        }
        return angle;
    }
}
