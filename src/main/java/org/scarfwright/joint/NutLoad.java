package org.scarfwright.joint;

/**
 * What a string that turns at the nut presses on it with. The string is taken to slide freely, so that it pulls alike on both
 * sides of the nut.
 *
 * <p><b>Source:</b> derived here: the sum of two equal pulls that differ in direction by the break angle.
 *
 * @param newtons T, tension of the string
 * @param breakRadians β, angle it turns through; not below 0
 */
public record NutLoad(double newtons, double breakRadians) {
    public NutLoad {
        if (!(newtons >= 0 && breakRadians >= 0)) {
            throw new IllegalArgumentException("no load: " + newtons + " N, " + breakRadians);
        }
    }

    /** 2·T·sin(β/2), in newtons, along the line that halves the angle between both runs of the string. */
    public double resultant() {
        return 2 * newtons * Math.sin(breakRadians / 2);
    }

    /** T·sin β, in newtons: its part square to the neck's top, the downforce. */
    public double down() {
        return newtons * Math.sin(breakRadians);
    }

    /** T·(1 − cos β), in newtons: its part along the neck, toward the head's side. */
    public double along() {
        return newtons * (1 - Math.cos(breakRadians));
    }
}
