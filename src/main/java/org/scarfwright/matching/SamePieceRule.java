package org.scarfwright.matching;

import org.scarfwright.necks.MatchRule;

/** Neck and head come from one piece where the design asks for it. */
record SamePieceRule() implements PairRule {
    @Override
    public String name() {
        return "same piece";
    }

    @Override
    public Verdict judge(PairTrial t) {
        if (t.design().match() != MatchRule.SAME_PIECE
                || t.neck().code().equals(t.head().code())) {
            return Verdict.FITS;
        }
        return new Verdict.Refused(
                name(),
                "neck and head must come from one piece, and " + t.neck().code() + " and "
                        + t.head().code() + " are two",
                null);
    }
}
