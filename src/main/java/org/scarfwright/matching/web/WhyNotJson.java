package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.WhyNot;
import org.scarfwright.measure.Length;

/** Why a piece is not cut for an order, as the API gives it; see {@link WhyNot}. */
record WhyNotJson(String order, String piece, List<AnswerJson> answers) {

    /** @param fits no rule refuses it */
    record AnswerJson(
            String part,
            String arrangement,
            BigDecimal angle,
            boolean fits,
            @Nullable String rule,
            @Nullable BigDecimal shortByMm,
            String text) {}

    static WhyNotJson of(WhyNot w) {
        return new WhyNotJson(
                w.order(),
                w.piece(),
                w.answers().stream()
                        .map(a -> new AnswerJson(
                                a.part(),
                                a.arrangement().word(),
                                a.angle().toDegrees(),
                                a.rule() == null,
                                a.rule(),
                                mm(a.shortBy()),
                                a.text()))
                        .toList());
    }

    private static @Nullable BigDecimal mm(@Nullable Length length) {
        return length == null ? null : length.toMm();
    }
}
