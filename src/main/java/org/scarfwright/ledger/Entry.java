package org.scarfwright.ledger;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;

/**
 * One doing of a person, whole.
 *
 * @param id its number; they have no gaps
 * @param why in the person's own words; may be empty
 * @param undoes the entry it takes back
 * @param undoneBy the entry that took it back
 * @param outcomes what became of the wood it took from its pieces
 */
public record Entry(
        long id,
        PieceChanged.Kind kind,
        Instant at,
        String who,
        String why,
        @Nullable Long undoes,
        @Nullable Long undoneBy,
        String hash,
        List<Act> acts,
        List<Outcome> outcomes) {
    public Entry {
        acts = List.copyOf(acts);
        outcomes = List.copyOf(outcomes);
    }
}
