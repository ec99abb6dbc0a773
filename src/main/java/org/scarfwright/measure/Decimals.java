package org.scarfwright.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Pattern;

/** Decimal numbers as people write them, with a point or a comma. Never depends on the machine's locale. */
final class Decimals {
    private static final Pattern PLAIN = Pattern.compile("\\d{1,12}(?:[.,]\\d{1,9})?|[.,]\\d{1,9}");
    private static final Pattern GROUPED = Pattern.compile("[1-9]\\d{0,2},\\d{3}");
    private static final int SHOWN = 40;
    private static final int LONGEST_WHOLE = 19;

    private Decimals() {}

    static BigDecimal parse(String text, String example) {
        String s = text.strip();
        if (s.isEmpty()) {
            throw new MeasureFormatException("is empty; write for example " + example);
        }
        if (s.charAt(0) == '-' || s.charAt(0) == '\u2212') {
            throw new MeasureFormatException(quote(s) + " is negative; write for example " + example);
        }
        if (GROUPED.matcher(s).matches()) {
            throw new MeasureFormatException(
                    quote(s) + " can be read two ways; write " + s.replace(",", "") + " or " + s.replace(',', '.'));
        }
        if (!PLAIN.matcher(s).matches()) {
            throw new MeasureFormatException(quote(s) + " is not a number; write for example " + example);
        }
        return new BigDecimal(s.replace(',', '.'));
    }

    /**
     * Rounded half up to a whole number. The exponent is looked at first: to write out 1E+999999999 would take all memory.
     *
     * @throws ArithmeticException when it does not fit a long
     */
    static long whole(BigDecimal value) {
        long digitsBeforePoint = (long) value.precision() - value.scale();
        if (value.signum() == 0 || digitsBeforePoint < 0) {
            return 0;
        }
        if (digitsBeforePoint > LONGEST_WHOLE) {
            throw new ArithmeticException("too large a number");
        }
        return value.setScale(0, RoundingMode.HALF_UP).longValueExact();
    }

    /** The text in quotes, cut short, so that a huge cell does not fill the page that reports it; never inside a character. */
    static String quote(String text) {
        String s = text.strip();
        if (s.length() <= SHOWN) {
            return "“" + s + "”";
        }
        int end = Character.isHighSurrogate(s.charAt(SHOWN - 1)) ? SHOWN - 1 : SHOWN;
        return "“" + s.substring(0, end) + "…”";
    }
}
