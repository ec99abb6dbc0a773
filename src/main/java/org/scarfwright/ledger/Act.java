package org.scarfwright.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.PieceChanged;

/**
 * One entry of the ledger: something that happened to a piece. Entries are added and never changed.
 *
 * @param volumeBefore of the piece, before the act; zero when it was not there
 * @param volumeAfter of the piece, after the act; zero when it is not there any more
 * @param planId the plan it was done for; empty when none
 * @param detail a sentence
 */
public record Act(
        long id,
        PieceChanged.Kind kind,
        String pieceCode,
        Volume volumeBefore,
        Volume volumeAfter,
        @Nullable Long planId,
        Instant at,
        String who,
        String detail) {
    /** What the act added to the rack; negative when it took something away. */
    public Volume change() {
        return volumeAfter.minus(volumeBefore);
    }
}
