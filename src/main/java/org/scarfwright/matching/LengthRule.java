package org.scarfwright.matching;

import java.util.Optional;
import org.scarfwright.measure.Length;

/** The piece is long enough between its end trims for the part with its allowances, its bevel and the saw's kerf. */
record LengthRule() implements PartRule {
    @Override
    public String name() {
        return "length";
    }

    @Override
    public boolean fits(Trial t) {
        return !t.section().isLongerThan(betweenTrims(t));
    }

    @Override
    public Length shortBy(Trial t) {
        return t.section().minus(betweenTrims(t));
    }

    @Override
    public Verdict.Refused why(Trial t) {
        Length missing = shortBy(t);
        String reason = Words.atLeast(missing) + " too short "
                + t.need().arrangement().word()
                + (t.need().design().angles().size() > 1 ? " at " + t.need().angle() : "")
                + otherWay(t).map(" "::concat).map(";"::concat).orElse("");
        return new Verdict.Refused(name(), reason, missing);
    }

    private Optional<String> otherWay(Trial t) {
        return Way.of(t.need().design()).stream()
                .filter(w -> w.arrangement() != t.need().arrangement())
                .map(w -> t.with(t.neck() ? w.neck() : w.head()))
                .filter(this::fits)
                .findFirst()
                .map(other -> "fits " + other.need().arrangement().word());
    }

    static Length betweenTrims(Trial t) {
        return t.piece()
                .length()
                .length()
                .minus(t.piece().trimLeft())
                .minus(t.piece().trimRight())
                .max(Length.ZERO);
    }
}
