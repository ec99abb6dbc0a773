package org.scarfwright.matching.web;

import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.ExtraCost;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** The extra cost near-equal plans may have, as text. */
final class NearForm {
    private NearForm() {}

    /** @throws InvalidInputException when it is no cost */
    static ExtraCost read(@Nullable String typed) {
        String text = typed == null ? "" : typed.strip();
        try {
            if (!text.isEmpty()) {
                return ExtraCost.parse(text);
            }
        } catch (MeasureFormatException e) {
            throw refused(text, "is not right: " + e.getMessage());
        }
        throw refused(text, "is missing; write for example 2.50 or 5 %");
    }

    private static InvalidInputException refused(String text, String message) {
        return new InvalidInputException(new FieldError("/extra", "Extra cost", text, message));
    }
}
