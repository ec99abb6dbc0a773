package org.scarfwright.ledger.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Act;
import org.scarfwright.ledger.ActWords;
import org.scarfwright.ledger.Entry;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;

/** Entries as the pages show them. */
final class LedgerView {
    private LedgerView() {}

    /** An act as a row. */
    record ActRow(Act act, String kind, boolean moved) {
        static ActRow of(Act act) {
            return new ActRow(act, ActWords.kind(act.kind()), !act.change().isZero());
        }
    }

    /**
     * What became of some wood.
     *
     * @param unexplained it is the difference nobody explained
     */
    record OutcomeRow(
            String what,
            String of,
            Outcome.@Nullable NeckPart neck,
            @Nullable String toPiece,
            Volume volume,
            @Nullable Volume planned,
            @Nullable Money cost,
            boolean unexplained) {
        static OutcomeRow of(Outcome o) {
            return new OutcomeRow(
                    capital(ActWords.outcome(o)),
                    o.neck() == null ? "" : o.neck().title(),
                    o.neck(),
                    o.toPiece(),
                    o.volume(),
                    o.planned(),
                    o.cost(),
                    o.kind() == Outcome.Kind.UNEXPLAINED);
        }
    }

    static List<ActRow> acts(Entry entry) {
        return entry.acts().stream().map(ActRow::of).toList();
    }

    static List<OutcomeRow> outcomes(Entry entry) {
        return entry.outcomes().stream().map(OutcomeRow::of).toList();
    }

    static Volume sum(Entry entry) {
        return entry.outcomes().stream().map(Outcome::volume).reduce(Volume.ZERO, Volume::plus);
    }

    static String cause(Outcome.Cause cause) {
        return ActWords.cause(cause);
    }

    static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
