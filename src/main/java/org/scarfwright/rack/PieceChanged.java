package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;

/**
 * Something happened to a piece; part of {@link PiecesChanged}.
 *
 * @param volumeBefore zero for a piece that was not there
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
        RELEASED
    }
}
