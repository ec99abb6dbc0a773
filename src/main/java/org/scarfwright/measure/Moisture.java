package org.scarfwright.measure;

import java.math.BigDecimal;

/**
 * Moisture content of wood in whole hundredths of a percent of its oven-dry mass.
 *
 * @param hundredths hundredths of a percent
 */
public record Moisture(int hundredths) implements Comparable<Moisture> {
    public static Moisture ofPercent(BigDecimal percent) {
        return new Moisture(Math.toIntExact(Decimals.whole(percent.movePointRight(2))));
    }

    public static Moisture ofPercent(double percent) {
        return ofPercent(BigDecimal.valueOf(percent));
    }

    /**
     * Reads a moisture content: {@code 8}, {@code 8.5}, {@code 8,5 %}.
     *
     * @throws MeasureFormatException with a sentence that says what would be right
     */
    public static Moisture parse(String text) {
        String s = text.strip();
        String number = s.endsWith("%") ? s.substring(0, s.length() - 1) : s;
        BigDecimal percent = Decimals.parse(number, "8 or 8.5");
        if (percent.compareTo(BigDecimal.valueOf(300)) > 0) {
            throw new MeasureFormatException(
                    Decimals.quote(s) + " is not a moisture content in percent; write for example 8.5");
        }
        return ofPercent(percent);
    }

    public MoistureChange minus(Moisture other) {
        return new MoistureChange(hundredths - other.hundredths);
    }

    public BigDecimal toPercent() {
        return BigDecimal.valueOf(hundredths, 2);
    }

    @Override
    public int compareTo(Moisture other) {
        return Integer.compare(hundredths, other.hundredths);
    }

    @Override
    public String toString() {
        return toPercent().stripTrailingZeros().toPlainString() + " %";
    }
}
