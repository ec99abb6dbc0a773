package org.scarfwright.ledger;

import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;

/** Acts in words. */
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
            case CUT -> "Cut";
            case REST -> "Rest to the rack";
            case FAILED -> "Part lost";
            case SCRAPPED -> "Scrapped";
            case SOLD -> "Sold";
            case UNDONE -> "Undone";
            case CARRIED -> "Carried over";
        };
    }

    /** What wood became, such as waste: saw kerf. */
    public static String outcome(Outcome outcome) {
        return switch (outcome.kind()) {
            case PART -> "part";
            case REST -> "rest";
            case WASTE -> outcome.cause() == null ? "waste" : "waste: " + cause(outcome.cause());
            case UNEXPLAINED -> "unexplained difference";
            case SOLD -> "sold";
        };
    }

    public static String cause(Outcome.Cause cause) {
        return switch (cause) {
            case KERF -> "saw kerf";
            case BEVEL -> "bevel wedges";
            case EDGE -> "edge trim";
            case TRIM -> "end trim and defects";
            case PLANING -> "planing";
            case REST -> "rests too small to keep";
            case SCRAPPED -> "whole pieces scrapped";
            case SPOILT -> "parts spoilt";
        };
    }
}
