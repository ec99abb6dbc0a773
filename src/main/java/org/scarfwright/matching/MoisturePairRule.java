package org.scarfwright.matching;

import org.scarfwright.measure.MoistureChange;
import org.scarfwright.rack.MoistureReading;

/** Neck and head are about as dry as each other. Where one was never measured nothing is refused; see the moisture range. */
record MoisturePairRule() implements PairRule {
    @Override
    public String name() {
        return "moisture apart";
    }

    @Override
    public Verdict judge(PairTrial t) {
        MoistureReading neck = t.neck().moisture();
        MoistureReading head = t.head().moisture();
        if (neck == null || head == null) {
            return Verdict.FITS;
        }
        MoistureChange apart = neck.content().minus(head.content()).abs();
        MoistureChange limit = t.shop().settings().moistureApart();
        if (apart.compareTo(limit) <= 0) {
            return Verdict.FITS;
        }
        return new Verdict.Refused(
                name(),
                t.neck().code() + " at " + neck.content() + " and " + t.head().code() + " at " + head.content()
                        + " differ by " + apart + " of moisture; " + limit + " at most is right",
                null);
    }
}
