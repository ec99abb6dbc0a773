package org.scarfwright.joint;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scarfwright.measure.MeasureFormatException;

/**
 * What a string is tuned to.
 *
 * <p><b>Source:</b> equal temperament, twelve equal steps to the octave, with A4 at 440 Hz (ISO 16). Octaves change at C, so
 * that A4 is followed by C5.
 *
 * @param name as it is shown: E4, or 329.63 Hz
 * @param hertz frequency, 8 to 5000
 */
public record Pitch(String name, double hertz) {
    private static final double A4 = 440;
    private static final double LOWEST = 8;
    private static final double HIGHEST = 5000;
    private static final int NOTES = 12;

    /** Half tones of C, D, E, F, G, A, B above C. */
    private static final String LETTERS = "C D EF G A B";

    private static final int A4_ABOVE_C0 = 4 * NOTES + LETTERS.indexOf('A');
    private static final Pattern NOTE = Pattern.compile("([A-Ga-g])([#♯b♭]?)(\\d)");
    private static final Pattern FREQUENCY =
            Pattern.compile("(\\d{1,4}(?:[.,]\\d{1,4})?)\\s*(?:Hz)?", Pattern.CASE_INSENSITIVE);

    /**
     * Reads E4, F#3, B♭2, 329.63 or 329,63 Hz.
     *
     * @throws MeasureFormatException with a sentence that says what would be right
     */
    public static Pitch parse(String text) {
        String s = text.strip();
        Matcher note = NOTE.matcher(s);
        Matcher frequency = FREQUENCY.matcher(s);
        if (note.matches()) {
            String letter = note.group(1).toUpperCase(Locale.ROOT);
            int above = Integer.parseInt(note.group(3)) * NOTES + LETTERS.indexOf(letter) + accidental(note.group(2));
            return within(letter + note.group(2) + note.group(3), ofHalfTones(above - A4_ABOVE_C0), s);
        }
        if (frequency.matches()) {
            double hertz = Double.parseDouble(frequency.group(1).replace(',', '.'));
            return within(frequency.group(1).replace(',', '.') + " Hz", hertz, s);
        }
        String shown = s.length() <= 40 ? s : s.substring(0, 40) + "…";
        throw new MeasureFormatException("“" + shown + "” is no pitch; write a note such as E4 or F#3, or 329.63 Hz");
    }

    /** Half tones from A4, above 0 upward. */
    static double ofHalfTones(int fromA4) {
        return A4 * Math.pow(2, (double) fromA4 / NOTES);
    }

    private static int accidental(String sign) {
        return switch (sign) {
            case "#", "♯" -> 1;
            case "b", "♭" -> -1;
            default -> 0;
        };
    }

    private static Pitch within(String name, double hertz, String typed) {
        if (hertz < LOWEST || hertz > HIGHEST) {
            throw new MeasureFormatException("“" + typed + "” is not between 8 and 5000 Hz; write for example E4");
        }
        return new Pitch(name, hertz);
    }
}
