package org.scarfwright.matching;

import org.scarfwright.rack.PieceState;

/** Nobody else has the piece. */
record FreeRule() implements PartRule {
    @Override
    public String name() {
        return "free";
    }

    @Override
    public boolean fits(Trial t) {
        return t.piece().state() == PieceState.ON_RACK;
    }

    @Override
    public Verdict.Refused why(Trial t) {
        String where = switch (t.piece().state()) {
            case RESERVED -> "reserved for another plan";
            case AT_BENCH -> "at the bench";
            case USED_UP -> "used up";
            case SCRAPPED -> "scrapped";
            case SOLD -> "sold";
            case ON_RACK -> throw new IllegalStateException("a free piece is not refused");
        };
        return new Verdict.Refused(name(), where, null);
    }
}
