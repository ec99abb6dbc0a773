package org.scarfwright.joint;

import org.scarfwright.measure.Length;

/**
 * How hard a string pulls.
 *
 * <p><b>Source:</b> Mersenne's law (Marin Mersenne, Harmonie universelle, 1636): f = (1/2L)·√(T/µ) for an even string that bends
 * freely, so T = µ·(2·L·f)².
 */
public final class StringTension {
    private StringTension() {}

    /**
     * @param gramsPerMetre µ, mass per length in g/m, above 0
     * @param scale L, length that swings, above 0
     * @param hertz f, frequency of the fundamental, above 0
     * @return T in newtons
     */
    public static double newtons(double gramsPerMetre, Length scale, double hertz) {
        if (!(gramsPerMetre > 0 && scale.isPositive() && hertz > 0)) {
            throw new IllegalArgumentException("no string: " + gramsPerMetre + " g/m, " + scale + ", " + hertz + " Hz");
        }
        double speed = 2 * scale.mm() / 1000 * hertz;
        return gramsPerMetre / 1000 * speed * speed;
    }
}
