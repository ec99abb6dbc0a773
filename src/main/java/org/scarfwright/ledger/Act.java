package org.scarfwright.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.PieceChanged;

/**
 * What one entry did to one piece. An act on a size says what the piece's volume was and is; any other says the same twice.
 *
 * @param entry number of the entry it belongs to
 * @param position its place in the entry, from 1
 * @param who did it; "the shop" without sign-in
 * @param detail a sentence
 */
public record Act(
        long entry,
        int position,
        PieceChanged.Kind kind,
        String pieceCode,
        Volume volumeBefore,
        Volume volumeAfter,
        @Nullable Long planId,
        Instant at,
        String who,
        String detail) {
    /** The same with when and by whom. */
    Act by(Instant moment, String person) {
        return new Act(entry, position, kind, pieceCode, volumeBefore, volumeAfter, planId, moment, person, detail);
    }

    /** Positive where volume came in, negative where it went out. */
    public Volume change() {
        return volumeAfter.minus(volumeBefore);
    }
}
