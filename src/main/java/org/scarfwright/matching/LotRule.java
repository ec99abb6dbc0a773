package org.scarfwright.matching;

import org.scarfwright.necks.MatchRule;
import org.scarfwright.rack.Piece;

/** Neck and head come from the same lot where the design asks for it. A piece whose lot nobody knows is from no lot. */
record LotRule() implements PairRule {
    @Override
    public String name() {
        return "same lot";
    }

    @Override
    public Verdict judge(PairTrial t) {
        String lot = t.neck().lot();
        if (t.design().match() != MatchRule.SAME_LOT
                || (lot != null && lot.equals(t.head().lot()))) {
            return Verdict.FITS;
        }
        return new Verdict.Refused(
                name(), "neck and head must come from one lot: " + lot(t.neck()) + " and " + lot(t.head()), null);
    }

    private static String lot(Piece piece) {
        return piece.code() + (piece.lot() == null ? " is of no known lot" : " is from " + piece.lot());
    }
}
