package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * The way of a string over the nut to its post, in the side view. The neck's top is level, the face of the head falls from the
 * nut at the tilt; the string comes level, turns down at the nut's slot and runs straight to where it winds on its post.
 * Whether it also turns sideways is left out.
 *
 * <p><b>Source:</b> derived here.
 *
 * @param tilt a, between the neck's top and the head's face
 * @param slot g, height of the string in the nut above the edge where the face leaves the neck's top; not below 0
 * @param postHeight p, of the winding above the face, square to it; not below 0
 * @param postDistance d, of the post from the nut along the face; above 0
 */
public record StringPath(Angle tilt, Length slot, Length postHeight, Length postDistance) {

    /**
     * The angle the string turns through at the nut, in radians: tan β = (g + d·sin a − p·cos a)/(d·cos a + p·sin a). Not above 0
     * where the winding is as high as the slot: the string then does not press on the nut.
     */
    public double breakRadians() {
        double d = postDistance.mm();
        double p = postHeight.mm();
        double a = tilt.radians();
        double down = slot.mm() + d * Math.sin(a) - p * Math.cos(a);
        double along = d * Math.cos(a) + p * Math.sin(a);
        return Math.atan2(down, along);
    }

    /** The same in degrees. */
    public double breakDegrees() {
        return Math.toDegrees(breakRadians());
    }

    /** Whether the string presses on the nut at all. */
    public boolean pressesOnNut() {
        return breakRadians() > 0;
    }
}
