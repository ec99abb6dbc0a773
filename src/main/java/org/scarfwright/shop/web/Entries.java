package org.scarfwright.shop.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Moisture;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** Reads the texts of one form and keeps every error, so that a person is told all of them at once. */
final class Entries {
    private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");
    private static final Pattern TENTHS = Pattern.compile("-?\\d{1,5}(\\.\\d)?");
    private static final Pattern PLAIN_TEXT = Pattern.compile("[^\\p{Cntrl}]*");

    private final LengthUnit unit;
    private final String lengthSuffix;
    private final List<FieldError> errors = new ArrayList<>();

    private Entries(LengthUnit unit, String lengthSuffix) {
        this.unit = unit;
        this.lengthSuffix = lengthSuffix;
    }

    /** @param unit what a bare number means: the unit the labels named */
    static Entries ofPage(LengthUnit unit) {
        return new Entries(unit, "");
    }

    /** Keys of lengths end in Mm, and a bare number is millimetres. */
    static Entries ofApi() {
        return new Entries(LengthUnit.MM, JsonTexts.LENGTH_SUFFIX);
    }

    /** One thing a person entered: the form's name for it, the page's name for it and the text. */
    record Entry(String name, String label, String text) {}

    /** What a number may be, in the smallest unit of its kind. */
    record Range(long least, long most) {}

    Length length(Entry entry, Range um) {
        Entry named = asLength(entry);
        Length read = read(named, () -> LengthParser.parse(named.text(), unit), Length.ZERO);
        return inside(named, read, read.um(), um, Entries::shown);
    }

    /** The entry as its key has it, which in the API ends in Mm. */
    Entry asLength(Entry entry) {
        return new Entry(entry.name() + lengthSuffix, entry.label(), entry.text());
    }

    Angle angle(Entry entry, Range mdeg) {
        Angle read = read(entry, () -> Angle.parse(entry.text()), new Angle(0));
        return inside(entry, read, read.millidegrees(), mdeg, n -> new Angle((int) n).toString());
    }

    Moisture moisture(Entry entry, Range hundredths) {
        Moisture read = read(entry, () -> Moisture.parse(entry.text()), new Moisture(0));
        return inside(entry, read, read.hundredths(), hundredths, n -> new Moisture((int) n).toString());
    }

    int whole(Entry entry, Range range) {
        String text = entry.text().strip();
        if (!WHOLE.matcher(text).matches()) {
            refuse(
                    entry,
                    (text.isEmpty() ? "is empty" : "“" + text + "” is not a whole number") + "; write " + range.least()
                            + " to " + range.most());
            return 0;
        }
        int read = Integer.parseInt(text);
        return inside(entry, read, read, range, Long::toString);
    }

    /** A decimal with one place; the range is in tenths. */
    BigDecimal tenths(Entry entry, Range tenths) {
        String text = entry.text().strip().replace(',', '.');
        if (!TENTHS.matcher(text).matches()) {
            refuse(
                    entry,
                    (text.isEmpty()
                                    ? "is empty"
                                    : "“" + entry.text().strip() + "” is not a number to one decimal place")
                            + "; write " + decimal(tenths.least()) + " to " + decimal(tenths.most()));
            return BigDecimal.ZERO;
        }
        BigDecimal read = new BigDecimal(text);
        return inside(entry, read, read.movePointRight(1).longValueExact(), tenths, Entries::decimal);
    }

    private static String decimal(long tenths) {
        return number(BigDecimal.valueOf(tenths, 1));
    }

    String text(Entry entry, int longest) {
        String text = entry.text().strip();
        if (text.isEmpty()) {
            refuse(entry, "is empty");
        } else if (text.length() > longest) {
            refuse(entry, "is " + text.length() + " characters long; write at most " + longest);
        } else if (!PLAIN_TEXT.matcher(text).matches()) {
            refuse(entry, "holds a character that cannot be printed; type it again");
        }
        return text;
    }

    void refuse(Entry entry, String message) {
        errors.add(new FieldError("/" + entry.name(), entry.label(), entry.text(), message));
    }

    /** @throws InvalidInputException with every error found so far */
    void throwIfRefused() {
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
    }

    /** Text that reads back as exactly this length: in the shop's unit where that is exact, else in millimetres. */
    static String typed(Length length, LengthUnit unit) {
        String text = new LengthFormat(unit, java.util.Locale.ROOT).number(length);
        return LengthParser.parse(text, unit).equals(length) ? text.replaceFirst("\\.0$", "") : length.toString();
    }

    private static String shown(long um) {
        return Length.ofUm(um).toString();
    }

    private <T> T read(Entry entry, Supplier<T> reading, T whenRefused) {
        try {
            return reading.get();
        } catch (MeasureFormatException e) {
            refuse(entry, String.valueOf(e.getMessage()));
            return whenRefused;
        }
    }

    private <T> T inside(Entry entry, T read, long value, Range range, java.util.function.LongFunction<String> shown) {
        boolean alreadyRefused = errors.stream().anyMatch(e -> e.pointer().equals("/" + entry.name()));
        if (!alreadyRefused && (value < range.least() || value > range.most())) {
            refuse(
                    entry,
                    "“" + entry.text().strip() + "” is " + (value < range.least() ? "too small" : "too large")
                            + "; write " + shown.apply(range.least()) + " to " + shown.apply(range.most()));
        }
        return read;
    }

    /** The plain number of a decimal without the zeros nobody typed. */
    static String number(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
