package org.scarfwright.measure;

import java.math.BigDecimal;

/**
 * A length in whole micrometres. May be negative only as a difference (the end of a joint behind the nut, a shortfall).
 *
 * @param um micrometres
 */
public record Length(long um) implements Comparable<Length> {
    public static final Length ZERO = new Length(0);

    private static final BigDecimal UM_PER_MM = BigDecimal.valueOf(1000);

    public static Length ofUm(long um) {
        return new Length(um);
    }

    /** Whole millimetres. */
    public static Length ofMm(long mm) {
        return new Length(Math.multiplyExact(mm, 1000L));
    }

    /**
     * Decimal millimetres, rounded half up to a whole micrometre.
     *
     * @throws ArithmeticException beyond what a length holds
     */
    public static Length ofMm(BigDecimal mm) {
        return new Length(Decimals.whole(mm.multiply(UM_PER_MM)));
    }

    /** The result of a formula, in millimetres, rounded to the nearest micrometre: for figures that are only shown. */
    public static Length nearestMm(double mm) {
        return new Length(Math.round(finite(mm) * 1000.0));
    }

    /** The result of a formula, in millimetres, rounded up: for what a job needs. */
    public static Length upFromMm(double mm) {
        return new Length((long) Math.ceil(settle(finite(mm) * 1000.0)));
    }

    /** The result of a formula, in millimetres, rounded down: for what the rack offers. */
    public static Length downFromMm(double mm) {
        return new Length((long) Math.floor(settle(finite(mm) * 1000.0)));
    }

    /** A double that is a whole number but for its last bits is that whole number: 20.000000000001 µm must not become 21. */
    private static double settle(double um) {
        double whole = Math.rint(um);
        return Math.abs(um - whole) < 1e-6 ? whole : um;
    }

    private static double finite(double mm) {
        if (!Double.isFinite(mm) || Math.abs(mm) > 1e12) {
            throw new ArithmeticException("not a length: " + mm + " mm");
        }
        return mm;
    }

    public Length plus(Length other) {
        return new Length(Math.addExact(um, other.um));
    }

    public Length minus(Length other) {
        return new Length(Math.subtractExact(um, other.um));
    }

    public Length times(long factor) {
        return new Length(Math.multiplyExact(um, factor));
    }

    /** Half, rounded up. */
    public Length halfUp() {
        return new Length(Math.floorDiv(um + 1, 2L));
    }

    public Length max(Length other) {
        return um >= other.um ? this : other;
    }

    public Length min(Length other) {
        return um <= other.um ? this : other;
    }

    public boolean isLongerThan(Length other) {
        return um > other.um;
    }

    public boolean isShorterThan(Length other) {
        return um < other.um;
    }

    public boolean isPositive() {
        return um > 0;
    }

    /** Millimetres for use inside a formula. */
    public double mm() {
        return um / 1000.0;
    }

    /** Exact decimal millimetres, three places. */
    public BigDecimal toMm() {
        return BigDecimal.valueOf(um, 3);
    }

    @Override
    public int compareTo(Length other) {
        return Long.compare(um, other.um);
    }

    @Override
    public String toString() {
        return toMm().stripTrailingZeros().toPlainString() + " mm";
    }
}
