package org.scarfwright.measure;

import java.math.BigDecimal;

/**
 * An angle in whole thousandths of a degree.
 *
 * @param millidegrees thousandths of a degree
 */
public record Angle(int millidegrees) implements Comparable<Angle> {
    public static Angle ofDegrees(int degrees) {
        return new Angle(Math.multiplyExact(degrees, 1000));
    }

    /** Decimal degrees, rounded half up to a thousandth. */
    public static Angle ofDegrees(BigDecimal degrees) {
        return new Angle(Math.toIntExact(Decimals.whole(degrees.movePointRight(3))));
    }

    /**
     * Reads degrees as people write them: {@code 10}, {@code 10.5}, {@code 10,5°}.
     *
     * @throws MeasureFormatException with a sentence that says what would be right
     */
    public static Angle parse(String text) {
        String s = text.strip();
        String number = s.endsWith("°") ? s.substring(0, s.length() - 1) : s;
        BigDecimal degrees = Decimals.parse(number, "10 or 12.5");
        if (degrees.compareTo(BigDecimal.valueOf(360)) >= 0) {
            throw new MeasureFormatException(
                    Decimals.quote(s) + " is not an angle in degrees; write for example 10 or 12.5");
        }
        return ofDegrees(degrees);
    }

    public double radians() {
        return Math.toRadians(millidegrees / 1000.0);
    }

    public double sin() {
        return Math.sin(radians());
    }

    public double tan() {
        return Math.tan(radians());
    }

    public double cot() {
        return 1.0 / tan();
    }

    public BigDecimal toDegrees() {
        return BigDecimal.valueOf(millidegrees, 3);
    }

    @Override
    public int compareTo(Angle other) {
        return Integer.compare(millidegrees, other.millidegrees);
    }

    @Override
    public String toString() {
        return toDegrees().stripTrailingZeros().toPlainString() + "°";
    }
}
