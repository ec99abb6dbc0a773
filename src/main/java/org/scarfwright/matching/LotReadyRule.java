package org.scarfwright.matching;

import java.time.LocalDate;
import java.util.Objects;

/** Wood that came in lately settles before it is cut. */
record LotReadyRule() implements PartRule {
    @Override
    public String name() {
        return "lot ready";
    }

    @Override
    public boolean fits(Trial t) {
        LocalDate ready = t.piece().lotReadyOn();
        return ready == null || !ready.isAfter(t.shop().day());
    }

    @Override
    public Verdict.Refused why(Trial t) {
        String lot = t.piece().lot() == null ? "" : " " + t.piece().lot();
        return new Verdict.Refused(
                name(),
                "its lot" + lot + " is ready on "
                        + Objects.requireNonNull(t.piece().lotReadyOn()) + ", and the work starts on "
                        + t.shop().day(),
                null);
    }
}
