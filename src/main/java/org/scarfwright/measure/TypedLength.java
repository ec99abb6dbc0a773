package org.scarfwright.measure;

/**
 * A length with the text it was entered as, so that 25 3/8 in is shown again as 25 3/8 in and never as 25.374 in.
 *
 * @param length what was meant, rounded once to whole micrometres
 * @param typed the text as entered, trimmed
 */
public record TypedLength(Length length, String typed) {
    public static TypedLength parse(String text, LengthUnit unit) {
        return new TypedLength(LengthParser.parse(text, unit), withUnit(text.strip(), unit));
    }

    /** A length that came from a calculation or a decimal in millimetres; its text is its own value. */
    public static TypedLength of(Length length) {
        return new TypedLength(length, length.toString());
    }

    /** A bare number means the unit of its field; the unit is kept with it so that the text stands alone. */
    private static String withUnit(String text, LengthUnit unit) {
        char last = text.charAt(text.length() - 1);
        boolean bareNumber = Character.isDigit(last) && text.indexOf('/') < 0;
        return bareNumber ? text + " " + unit.symbol() : text;
    }
}
