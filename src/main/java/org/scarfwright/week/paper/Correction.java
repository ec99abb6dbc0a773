package org.scarfwright.week.paper;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/**
 * Makes up for a printer that prints too small or too large.
 *
 * @param measured what the bar of 100 mm measures on its paper, in millimetres; 95 to 105
 */
public record Correction(double measured) {
    public static final Correction NONE = new Correction(100);

    private static final double LEAST = 95;
    private static final double MOST = 105;
    private static final Pattern NUMBER = Pattern.compile("(\\d{1,3}(?:[.,]\\d{1,2})?)\\s*(?:mm)?");

    public Correction {
        if (!(measured >= LEAST && measured <= MOST)) {
            throw new IllegalArgumentException("a bar of 100 mm measures 95 to 105 mm, not " + measured);
        }
    }

    /** What everything is drawn larger by: 100 over what was measured. */
    public double factor() {
        return 100 / measured;
    }

    /**
     * What a person read off the bar; blank is none.
     *
     * @throws InvalidInputException when it is no length from 95 to 105 mm
     */
    public static Correction of(String typed) {
        if (typed.isBlank()) {
            return NONE;
        }
        Matcher number = NUMBER.matcher(typed.strip());
        if (number.matches()) {
            double measured = new BigDecimal(number.group(1).replace(',', '.')).doubleValue();
            if (measured >= LEAST && measured <= MOST) {
                return new Correction(measured);
            }
        }
        throw new InvalidInputException(
                new FieldError(
                        "/measured",
                        "What the bar of 100 mm measures",
                        typed,
                        "must be a length from 95 to 105 mm, for example 98.7; a printer further off is set to scale its pages: print at 100 %"));
    }
}
