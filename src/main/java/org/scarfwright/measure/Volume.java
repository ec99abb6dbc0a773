package org.scarfwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * A volume in whole cubic micrometres. Sums are exact: a board is about 1e15 of them, so a rack outgrows a long.
 *
 * @param um3 cubic micrometres; negative only as a difference
 */
public record Volume(BigInteger um3) implements Comparable<Volume> {
    public static final Volume ZERO = new Volume(BigInteger.ZERO);

    private static final BigDecimal MOST_CM3 = BigDecimal.valueOf(10_000_000);

    public static Volume ofUm3(long um3) {
        return new Volume(BigInteger.valueOf(um3));
    }

    /** A rectangular block. */
    public static Volume of(Length a, Length b, Length c) {
        return new Volume(
                BigInteger.valueOf(a.um()).multiply(BigInteger.valueOf(b.um())).multiply(BigInteger.valueOf(c.um())));
    }

    /**
     * Cubic centimetres as people write them, such as 12.5 or 12,5; rounded once to the nearest cubic micrometre.
     *
     * @throws MeasureFormatException with a sentence that says what would be right
     */
    public static Volume parseCm3(String text) {
        BigDecimal cm3 = Decimals.parse(text, "12 or 12.5");
        if (cm3.compareTo(MOST_CM3) > 0) {
            throw new MeasureFormatException(Decimals.quote(text) + " is too large; write cm³, for example 12.5");
        }
        return new Volume(
                cm3.movePointRight(12).setScale(0, RoundingMode.HALF_UP).toBigIntegerExact());
    }

    public Volume plus(Volume other) {
        return new Volume(um3.add(other.um3));
    }

    public Volume minus(Volume other) {
        return new Volume(um3.subtract(other.um3));
    }

    public Volume times(long factor) {
        return new Volume(um3.multiply(BigInteger.valueOf(factor)));
    }

    /** Half, rounded down; the odd unit stays with whoever takes the difference. */
    public Volume halfDown() {
        return new Volume(um3.shiftRight(1));
    }

    public boolean isZero() {
        return um3.signum() == 0;
    }

    public int signum() {
        return um3.signum();
    }

    /** Exact decimal cubic millimetres, nine places. */
    public BigDecimal toMm3() {
        return new BigDecimal(um3, 9);
    }

    /** Cubic centimetres for display and for sums that are not stored. */
    public double cm3() {
        return um3.doubleValue() / 1e12;
    }

    /** This volume as a share of another, 0 when the other is nothing. */
    public double shareOf(Volume whole) {
        return whole.isZero() ? 0 : um3.doubleValue() / whole.um3.doubleValue();
    }

    @Override
    public int compareTo(Volume other) {
        return um3.compareTo(other.um3);
    }
}
