package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.scarfwright.measure.MeasureFormatException;

/** A plain decimal number with its unit behind it or without; a temperature may be below nothing, which no other measure is. */
final class DecimalText {
    private static final Pattern NUMBER = Pattern.compile("[-\u2212+]?\\d{1,6}(?:[.,]\\d{1,6})?");
    /** A comma before three digits may part thousands as well as decimals. */
    private static final Pattern GROUPED = Pattern.compile("[-\u2212+]?[1-9]\\d{0,2},\\d{3}");

    private static final int SHOWN = 40;

    /**
     * What a number may be.
     *
     * @param places digits behind the point at most
     */
    record Range(String least, String most, int places, String unit, String example) {
        /** @throws MeasureFormatException with what is wrong; reads on from the label */
        BigDecimal read(String text) {
            BigDecimal value = DecimalText.read(text, unit, example);
            if (value.compareTo(new BigDecimal(least)) < 0 || value.compareTo(new BigDecimal(most)) > 0) {
                throw new MeasureFormatException("is " + plain(value) + suffix() + "; it lies between " + least
                        + " and " + most + suffix() + ", for example " + example);
            }
            if (value.stripTrailingZeros().scale() > places) {
                throw new MeasureFormatException("is " + plain(value) + suffix() + "; write it with "
                        + (places == 0 ? "no digit" : places == 1 ? "one digit" : places + " digits")
                        + " behind the point at most, for example " + example);
            }
            return value;
        }

        private String suffix() {
            return unit.isEmpty() ? "" : " " + unit;
        }
    }

    private DecimalText() {}

    /**
     * @param unit may stand behind the number; empty for none
     * @throws MeasureFormatException with what is wrong; reads on from the label
     */
    static BigDecimal read(String text, String unit, String example) {
        String s = text.strip();
        if (s.isEmpty()) {
            throw new MeasureFormatException("is empty; write for example " + example);
        }
        String bare = (s.endsWith(unit) ? s.substring(0, s.length() - unit.length()) : s).strip();
        if (bare.length() > SHOWN || !NUMBER.matcher(bare).matches()) {
            String shown = s.length() <= SHOWN ? s : s.substring(0, SHOWN) + "…";
            throw new MeasureFormatException("“" + shown + "” is not a number" + (unit.isEmpty() ? "" : " in " + unit)
                    + "; write for example " + example);
        }
        if (GROUPED.matcher(bare).matches()) {
            throw new MeasureFormatException("“" + bare + "” can be read two ways; write " + bare.replace(",", "")
                    + " or " + bare.replace(',', '.'));
        }
        return new BigDecimal(bare.replace(',', '.').replace('\u2212', '-').replace("+", ""));
    }

    static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
