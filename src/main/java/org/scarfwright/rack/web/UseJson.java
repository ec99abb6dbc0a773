package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.PieceUses;

/** One design in one week, and whether a piece could be its neck or its head. */
@Schema(name = "PieceUse")
record UseJson(@Schema(example = "2026-W49") String week, String design, List<Asked> orders, Answer neck, Answer head) {

    /** An order. */
    @Schema(name = "NecksAsked")
    record Asked(
            String order,
            LocalDate due,

            @Schema(description = "How many no accepted plan has yet", minimum = "1")
            int necks) {}

    /** What the rules say. */
    @Schema(name = "FitAnswer")
    record Answer(
            boolean fits,

            @Schema(example = "12.4 mm too short underlaid") String words,

            @Schema(description = "By how much it falls short, when the reason is a length") @Nullable
            BigDecimal shortByMm) {
        static Answer of(PieceUses.Answer answer) {
            return new Answer(answer.fits(), answer.words(), PieceJson.toMm(answer.shortBy()));
        }
    }

    static UseJson of(PieceUses.Use use) {
        return new UseJson(
                use.week(),
                use.design(),
                use.orders().stream()
                        .map(o -> new Asked(o.order(), o.due(), o.necks()))
                        .toList(),
                Answer.of(use.neck()),
                Answer.of(use.head()));
    }
}
