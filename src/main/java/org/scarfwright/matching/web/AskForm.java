package org.scarfwright.matching.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/**
 * What is to be matched, as text.
 *
 * @param week as written, 2026-W49
 * @param orders codes of the orders to match; empty for every order of the week
 * @param seed which of several equally good plans is taken
 */
record AskForm(
        @Schema(example = "2026-W49") @Nullable String week,

        @Schema(description = "Codes of the orders to match; empty or left out for every order of the week") @Nullable
        List<@Nullable String> orders,

        @Schema(
                types = "integer",
                minimum = "0",
                maximum = "" + Plan.Asked.MOST_SEED,
                defaultValue = "0",
                description =
                        "Which of several equally good plans is taken; with 0 ties are broken by the pieces' codes")
        @Nullable
        String seed) {

    IsoWeek readWeek() {
        String text = written(week);
        if (text.isEmpty()) {
            throw refused("week", "Week", "", "is missing; write for example 2026-W49");
        }
        try {
            return IsoWeek.parse(text);
        } catch (MeasureFormatException e) {
            throw refused("week", "Week", text, "is not right: " + e.getMessage());
        }
    }

    /** @throws InvalidInputException when the seed is none */
    Plan.Asked read() {
        return new Plan.Asked(chosen(), readSeed(), null);
    }

    /** The orders as they were ticked or sent. */
    public List<String> chosen() {
        return Objects.requireNonNullElse(orders, List.<@Nullable String>of()).stream()
                .map(AskForm::written)
                .filter(code -> !code.isEmpty())
                .distinct()
                .toList();
    }

    private int readSeed() {
        String text = written(seed);
        if (text.isEmpty()) {
            return 0;
        }
        if (!text.matches("\\d{1,6}")) {
            throw refused(
                    "seed",
                    "Seed",
                    text,
                    "“" + text + "” is no whole number from 0 to " + Plan.Asked.MOST_SEED + "; write for example 7");
        }
        return Integer.parseInt(text);
    }

    private static String written(@Nullable String text) {
        return text == null ? "" : text.strip();
    }

    private static InvalidInputException refused(String field, String label, String value, String message) {
        return new InvalidInputException(new FieldError("/" + field, label, value, message));
    }
}
