package org.scarfwright.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/**
 * Prints lengths for people: millimetres to 0.1, inches to 1/64. Rounds to the nearest, once, here.
 *
 * @param unit {@link LengthUnit#INCH} prints fractions; every other unit prints a decimal with one place
 * @param locale decides the decimal mark only; digits are never grouped, so that what is printed can be typed again
 */
public record LengthFormat(LengthUnit unit, Locale locale) {
    private static final int SIXTY_FOURTHS = 64;

    public static LengthFormat mm(Locale locale) {
        return new LengthFormat(LengthUnit.MM, locale);
    }

    /** The number with its unit, such as {@code 640.5 mm} or {@code 25 3/8 in}. */
    public String print(Length length) {
        return number(length) + " " + unit.symbol();
    }

    /** The number alone, for a column whose head carries the unit. */
    public String number(Length length) {
        return unit == LengthUnit.INCH ? fraction(length) : decimal(length);
    }

    private String decimal(Length length) {
        BigDecimal value =
                BigDecimal.valueOf(length.um()).divide(BigDecimal.valueOf(unit.um()), 1, RoundingMode.HALF_UP);
        String plain = value.signum() == 0 ? "0.0" : value.toPlainString();
        char mark = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
        return plain.replace('.', mark);
    }

    private static String fraction(Length length) {
        long count = BigDecimal.valueOf(Math.abs(length.um()))
                .multiply(BigDecimal.valueOf(SIXTY_FOURTHS))
                .divide(BigDecimal.valueOf(LengthUnit.INCH.um()), 0, RoundingMode.HALF_UP)
                .longValueExact();
        String sign = length.um() < 0 && count > 0 ? "-" : "";
        long whole = count / SIXTY_FOURTHS;
        long rest = count % SIXTY_FOURTHS;
        if (rest == 0) {
            return sign + whole;
        }
        long shift = Long.numberOfTrailingZeros(rest);
        String part = (rest >> shift) + "/" + (SIXTY_FOURTHS >> shift);
        return whole == 0 ? sign + part : sign + whole + " " + part;
    }
}
