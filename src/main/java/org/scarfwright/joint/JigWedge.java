package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * The wedge that holds a piece at the tilt angle against a fence.
 *
 * @param angle above 0° and below 90°
 * @param base b, length along the fence
 */
public record JigWedge(Angle angle, Length base) {

    private static final Length BEARING = Length.ofMm(100);
    private static final long STEP_UM = 10_000;

    /**
     * A wedge that backs the whole of a bevel: its base is the bevel's run and 100 mm to bear on, rounded up to whole centimetres.
     * <b>Source:</b> common practice.
     */
    public static JigWedge backing(Length sawnThickness, Angle angle) {
        long least = Bevel.run(sawnThickness, angle).plus(BEARING).um();
        return new JigWedge(angle, Length.ofUm((least + STEP_UM - 1) / STEP_UM * STEP_UM));
    }

    /** Height at the thick end: b·tan a, to the nearest micrometre. <b>Source:</b> derived here. */
    public Length rise() {
        return Length.nearestMm(base.mm() * angle.tan());
    }

    /** Length of its sloping face: b / cos a, to the nearest micrometre. <b>Source:</b> derived here. */
    public Length face() {
        return Length.nearestMm(base.mm() / Math.cos(angle.radians()));
    }

    /** How far the angle is off when the rise is off by this much: atan((rise + error) / base) − a, to the nearest thousandth of a degree. */
    public Angle angleOff(Length riseError) {
        double off = Math.atan2(rise().mm() + riseError.mm(), base.mm()) - angle.radians();
        return new Angle((int) Math.round(Math.toDegrees(off) * 1000));
    }
}
