package org.scarfwright.measure;

import java.math.BigDecimal;

/**
 * An area in whole square micrometres.
 *
 * @param um2 square micrometres
 */
public record Area(long um2) implements Comparable<Area> {
    public static Area of(Length a, Length b) {
        return new Area(Math.multiplyExact(a.um(), b.um()));
    }

    /** Exact decimal square millimetres, six places. */
    public BigDecimal toMm2() {
        return BigDecimal.valueOf(um2, 6);
    }

    @Override
    public int compareTo(Area other) {
        return Long.compare(um2, other.um2);
    }
}
