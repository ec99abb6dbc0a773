package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Entry;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;

/** An entry as the API gives it. */
@Schema(name = "Entry")
record EntryJson(
        long id,
        String kind,
        Instant at,
        String who,
        String why,
        @Nullable Long undoes,
        @Nullable Long undoneBy,

        @Schema(description = "SHA-256 over the entry and the hash of the one before it")
        String hash,

        List<LedgerApi.ActJson> acts,
        List<OutcomeJson> outcomes) {

    /** What became of some wood. */
    @Schema(name = "Outcome")
    record OutcomeJson(
            String kind,
            @Nullable String cause,
            String fromPiece,
            @Nullable String toPiece,
            BigDecimal volumeMm3,
            @Nullable BigDecimal plannedMm3,
            @Nullable BigDecimal cost,
            @Nullable Long plan,
            @Nullable String order,
            @Nullable Integer neck,
            @Nullable String design,
            @Nullable String part,
            @Nullable BigDecimal lengthMm,
            @Nullable BigDecimal widthMm,
            @Nullable BigDecimal thicknessMm) {
        static OutcomeJson of(Outcome o) {
            Outcome.NeckPart neck = o.neck();
            Outcome.Size size = o.size();
            return new OutcomeJson(
                    word(o.kind()),
                    o.cause() == null ? null : word(o.cause()),
                    o.fromPiece(),
                    o.toPiece(),
                    o.volume().toMm3(),
                    o.planned() == null ? null : o.planned().toMm3(),
                    o.cost() == null ? null : o.cost().toDecimal(),
                    neck == null ? null : neck.plan(),
                    neck == null ? null : neck.order(),
                    neck == null ? null : neck.number(),
                    neck == null ? null : neck.design(),
                    neck == null ? null : neck.head() ? "head" : "neck",
                    size == null ? null : mm(size.length()),
                    size == null ? null : mm(size.width()),
                    size == null ? null : mm(size.thickness()));
        }

        private static BigDecimal mm(Length length) {
            return length.toMm();
        }
    }

    static EntryJson of(Entry entry) {
        return new EntryJson(
                entry.id(),
                word(entry.kind()),
                entry.at(),
                entry.who(),
                entry.why(),
                entry.undoes(),
                entry.undoneBy(),
                entry.hash(),
                entry.acts().stream().map(LedgerApi.ActJson::of).toList(),
                entry.outcomes().stream().map(OutcomeJson::of).toList());
    }

    static Volume unexplained(Entry entry) {
        return entry.outcomes().stream()
                .filter(o -> o.kind() == Outcome.Kind.UNEXPLAINED)
                .map(Outcome::volume)
                .reduce(Volume.ZERO, Volume::plus);
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
