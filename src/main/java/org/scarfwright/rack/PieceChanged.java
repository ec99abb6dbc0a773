package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;

/**
 * Something happened to a piece; part of {@link PiecesChanged}.
 *
 * @param volumeBefore of the wood that was there; zero for a piece that was not
 * @param volumeAfter of the wood that is there; zero for a piece that is not any more
 * @param planId the plan it was reserved for or released from
 * @param detail a sentence for the ledger
 */
public record PieceChanged(
        Kind kind,
        String pieceCode,
        Volume volumeBefore,
        Volume volumeAfter,
        @Nullable Long planId,
        String detail) {
    /** What happened. */
    public enum Kind {
        BOUGHT,
        IMPORTED,
        MEASURED,
        /** What is written about it changed, and no figure of its size or shape. */
        DESCRIBED,
        MOVED,
        RESERVED,
        RELEASED,
        /** Wood was taken from it by a saw or a planer. */
        CUT,
        /** It was cut from another piece and came to the rack. */
        REST,
        /** A part made of it was lost: a wrong cut, a failed joint. */
        FAILED,
        SCRAPPED,
        SOLD,
        /** Put back to what it was before another act. */
        UNDONE,
        /** It was there before the ledger kept whole states. */
        CARRIED
    }
}
