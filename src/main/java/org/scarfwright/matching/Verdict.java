package org.scarfwright.matching;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/** What a rule says. */
sealed interface Verdict {
    /** It fits. */
    Fits FITS = new Fits(null);

    /** @param note what a person should know all the same, a sentence; empty when nothing */
    record Fits(@Nullable String note) implements Verdict {}

    /**
     * It does not fit.
     *
     * @param rule name of the rule, such as length
     * @param reason reads on from the piece: "12.4 mm too short underlaid; fits overlaid"; no full stop
     * @param shortBy by how much, when the rule is about a length; above zero
     */
    record Refused(String rule, String reason, @Nullable Length shortBy) implements Verdict {}
}
