package org.scarfwright.matching;

import org.scarfwright.necks.MatchRule;
import org.scarfwright.rack.Piece;

/** Neck and head are of the same wood where the design asks for it: the same species, strip by strip. */
record MatchedWoodRule() implements PairRule {
    @Override
    public String name() {
        return "same wood";
    }

    @Override
    public Verdict judge(PairTrial t) {
        if (t.design().match() != MatchRule.SAME_WOOD
                || t.neck().wood().key().equals(t.head().wood().key())) {
            return Verdict.FITS;
        }
        return new Verdict.Refused(
                name(),
                "the head must be of the neck's wood: " + t.neck().code() + " is " + wood(t, t.neck()) + " and "
                        + t.head().code() + " is " + wood(t, t.head()),
                null);
    }

    private static String wood(PairTrial t, Piece piece) {
        return String.join(
                "/",
                piece.wood().speciesIds().stream().map(t.shop().woods()::one).toList());
    }
}
