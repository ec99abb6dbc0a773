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

    /** Height at the thick end: b·tan a, to the nearest micrometre. <b>Source:</b> derived here. */
    public Length rise() {
        return Length.nearestMm(base.mm() * angle.tan());
    }
}
