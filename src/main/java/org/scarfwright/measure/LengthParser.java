package org.scarfwright.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads a length as people write it: {@code 640}, {@code 640,5}, {@code 64 cm}, {@code 1.5 in}, {@code 25 3/8},
 * {@code 25-3/8"}, {@code 25⅜ in}. A fraction without a unit is inches, because nobody writes millimetres in eighths. Text
 * that could mean two things ({@code 25 38}, {@code 1,234}) is refused with a hint.
 */
public final class LengthParser {
    static final int LONGEST_TEXT = 60;
    private static final String EXAMPLE = "640, 64 cm or 25 3/8 in";

    /** Read, so that a room can refuse the length with the limit it has; no wood is measured in it. */
    private static final String KILOMETRES = "km";

    private static final BigDecimal UM_PER_KM = BigDecimal.valueOf(1_000_000_000L);
    private static final Map<Character, String> VULGAR = Map.ofEntries(
            Map.entry('½', "1/2"),
            Map.entry('¼', "1/4"),
            Map.entry('¾', "3/4"),
            Map.entry('⅛', "1/8"),
            Map.entry('⅜', "3/8"),
            Map.entry('⅝', "5/8"),
            Map.entry('⅞', "7/8"));
    private static final Pattern UNIT =
            Pattern.compile("(.*?)\\s*(mm|cm|m|in\\.?|inch|inches|\"|″|”|''|\\p{L}+\\.?|'|′)?", Pattern.DOTALL);
    private static final Pattern FRACTION =
            Pattern.compile("(?:(\\d{1,4})(?:\\s+|\\s*-\\s*))?(\\d{1,3})\\s*/\\s*(\\d{1,3})");
    private static final Pattern TWO_NUMBERS = Pattern.compile("(\\d+)\\s+(\\d+)");

    private LengthParser() {}

    /**
     * @param text what a person typed
     * @param unit the unit of a bare number
     * @return the length, rounded once to the nearest micrometre; never negative
     * @throws MeasureFormatException with a sentence that says what would be right
     */
    public static Length parse(String text, LengthUnit unit) {
        String s = text.strip();
        if (s.isEmpty()) {
            throw new MeasureFormatException("is empty; write for example " + EXAMPLE);
        }
        if (s.length() > LONGEST_TEXT) {
            throw new MeasureFormatException(
                    Decimals.quote(s) + " is too long for a length; write for example 640 or 25 3/8 in");
        }
        Matcher m = UNIT.matcher(spellOutFractions(s));
        if (!m.matches()) {
            throw notALength(s);
        }
        String number = m.group(1).strip();
        String suffix = m.group(2);
        if (number.isEmpty()) {
            throw notALength(s);
        }
        if (number.indexOf('\'') > 0 || number.indexOf('′') > 0) {
            throw inFeet(s);
        }
        if (KILOMETRES.equalsIgnoreCase(suffix)) {
            return toLength(Decimals.parse(number, EXAMPLE).multiply(UM_PER_KM), s);
        }
        LengthUnit written = suffix == null ? null : unitOf(suffix, s);
        Matcher fraction = FRACTION.matcher(number);
        if (fraction.matches()) {
            return fraction(fraction, written, s);
        }
        Matcher two = TWO_NUMBERS.matcher(number);
        if (two.matches()) {
            throw new MeasureFormatException(Decimals.quote(s) + " can be read two ways; write " + two.group(1)
                    + two.group(2) + ", or a fraction such as " + two.group(1) + " 3/8 in");
        }
        BigDecimal value = Decimals.parse(number, EXAMPLE);
        LengthUnit u = written == null ? unit : written;
        return toLength(value.multiply(BigDecimal.valueOf(u.um())), s);
    }

    private static String spellOutFractions(String s) {
        StringBuilder out = new StringBuilder(s.length() + 4);
        for (int i = 0; i < s.length(); i++) {
            String vulgar = VULGAR.get(s.charAt(i));
            if (vulgar == null) {
                out.append(s.charAt(i) == '\u00a0' || s.charAt(i) == '\u202f' ? ' ' : s.charAt(i));
            } else {
                out.append(i > 0 && Character.isDigit(s.charAt(i - 1)) ? " " : "")
                        .append(vulgar);
            }
        }
        return out.toString();
    }

    private static LengthUnit unitOf(String suffix, String whole) {
        return switch (suffix.toLowerCase(Locale.ROOT)) {
            case "mm" -> LengthUnit.MM;
            case "cm" -> LengthUnit.CM;
            case "m" -> LengthUnit.M;
            case "in", "in.", "inch", "inches", "\"", "″", "”", "''" -> LengthUnit.INCH;
            case "'", "′", "ft", "ft.", "foot", "feet" -> throw inFeet(whole);
            default ->
                throw new MeasureFormatException(
                        Decimals.quote(whole) + " has the unit " + Decimals.quote(suffix) + "; use mm, cm, m or in");
        };
    }

    private static Length fraction(Matcher f, @Nullable LengthUnit written, String whole) {
        if (written != null && written != LengthUnit.INCH) {
            throw new MeasureFormatException(Decimals.quote(whole) + " is a fraction in " + written.symbol()
                    + "; write fractions in inches or a decimal, for example 25.4 mm");
        }
        int inches = f.group(1) == null ? 0 : Integer.parseInt(f.group(1));
        int numerator = Integer.parseInt(f.group(2));
        int denominator = Integer.parseInt(f.group(3));
        if (denominator < 2 || denominator > 128 || Integer.bitCount(denominator) != 1) {
            throw new MeasureFormatException(Decimals.quote(whole)
                    + " is not a fraction of an inch rule; use halves, quarters … 64ths, for example 25 3/8 in");
        }
        if (f.group(1) != null && numerator >= denominator) {
            throw new MeasureFormatException(
                    Decimals.quote(whole) + " has a fraction of one or more; write for example 25 3/8 in");
        }
        BigDecimal um = BigDecimal.valueOf(inches)
                .add(BigDecimal.valueOf(numerator).divide(BigDecimal.valueOf(denominator)))
                .multiply(BigDecimal.valueOf(LengthUnit.INCH.um()));
        return toLength(um, whole);
    }

    private static Length toLength(BigDecimal um, String whole) {
        BigInteger rounded = um.setScale(0, RoundingMode.HALF_UP).toBigInteger();
        if (rounded.bitLength() > 53) {
            throw new MeasureFormatException(Decimals.quote(whole) + " is too large for a length");
        }
        return new Length(rounded.longValueExact());
    }

    private static MeasureFormatException inFeet(String s) {
        return new MeasureFormatException(Decimals.quote(s) + " is in feet; write it in inches, for example 25 3/8 in");
    }

    private static MeasureFormatException notALength(String s) {
        return new MeasureFormatException(Decimals.quote(s) + " is not a length; write for example " + EXAMPLE);
    }
}
