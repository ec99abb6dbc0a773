package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * The wedge that falls off where a bevel is cut from a square end. It has the very angle of the joint, so under a clamp it makes the
 * outer faces of the joint parallel.
 *
 * <p><b>Source:</b> derived here; that it is kept as a clamping block is common practice.
 *
 * @param angle above 0° and below 90°
 * @param thickness of the piece at the saw, and of the wedge at its thick end
 * @param width of the piece
 */
public record WedgeOffcut(Angle angle, Length thickness, Length width) {
    /** From its edge to its thick end: s·cot a, to the nearest micrometre. */
    public Length length() {
        return Length.nearestMm(thickness.mm() * angle.cot());
    }
}
