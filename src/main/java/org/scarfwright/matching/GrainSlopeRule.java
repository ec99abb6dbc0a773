package org.scarfwright.matching;

import java.util.Objects;
import java.util.Optional;

/** The grain of a neck runs along it. A piece whose grain was never judged is not refused; the plan says so. */
record GrainSlopeRule() implements PartRule {
    @Override
    public String name() {
        return "grain slope";
    }

    @Override
    public boolean fits(Trial t) {
        Integer slope = t.piece().grainSlope();
        return !t.neck() || slope == null || slope >= t.shop().settings().neckGrainSlope();
    }

    @Override
    public Verdict.Refused why(Trial t) {
        return new Verdict.Refused(
                name(),
                "its grain runs at 1 in " + Objects.requireNonNull(t.piece().grainSlope()) + ", and a neck needs 1 in "
                        + t.shop().settings().neckGrainSlope() + " or flatter",
                null);
    }

    @Override
    public Optional<String> note(Trial t) {
        return !t.neck() || t.piece().grainSlope() != null
                ? Optional.empty()
                : Optional.of(
                        "The slope of grain of " + t.piece().code() + " was never judged: look at it before cutting.");
    }
}
