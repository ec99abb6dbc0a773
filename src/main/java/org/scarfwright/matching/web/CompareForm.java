package org.scarfwright.matching.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/**
 * Which two plans to put side by side, as text.
 *
 * @param a id of the first plan
 * @param b id of the second plan
 */
record CompareForm(@Nullable String a, @Nullable String b) {

    boolean isEmpty() {
        return (a == null || a.isBlank()) && (b == null || b.isBlank());
    }

    /** Both ids. */
    record Ids(long first, long second) {}

    /** @throws InvalidInputException naming every id that is missing or none */
    Ids read() {
        List<FieldError> errors = new ArrayList<>();
        long first = id("a", "First plan", a, errors);
        long second = id("b", "Second plan", b, errors);
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return new Ids(first, second);
    }

    private static long id(String field, String label, @Nullable String typed, List<FieldError> errors) {
        String text = typed == null ? "" : typed.strip();
        if (text.matches("\\d{1,18}")) {
            return Long.parseLong(text);
        }
        errors.add(new FieldError(
                "/" + field,
                label,
                text,
                text.isEmpty()
                        ? "is missing; write the number of a plan"
                        : "“" + text + "” is no number of a plan; write for example 3"));
        return 0;
    }
}
