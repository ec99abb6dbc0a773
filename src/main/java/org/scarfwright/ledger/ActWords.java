package org.scarfwright.ledger;

import org.scarfwright.rack.PieceChanged;

/** Acts in plain words. */
public final class ActWords {
    private ActWords() {}

    public static String kind(PieceChanged.Kind kind) {
        return switch (kind) {
            case BOUGHT -> "Bought";
            case IMPORTED -> "Imported";
            case MEASURED -> "Measured";
            case DESCRIBED -> "Described";
            case MOVED -> "Moved";
            case RESERVED -> "Reserved";
            case RELEASED -> "Released";
        };
    }
}
