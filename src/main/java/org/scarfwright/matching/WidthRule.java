package org.scarfwright.matching;

import java.util.Optional;
import org.scarfwright.measure.Length;

/** The piece is wide enough once both edges of the part are straight; wings count where the design allows them. */
record WidthRule() implements PartRule {
    @Override
    public String name() {
        return "width";
    }

    @Override
    public boolean fits(Trial t) {
        return !t.need().width().isLongerThan(t.widthOver(t.section()));
    }

    @Override
    public Length shortBy(Trial t) {
        return t.need().width().minus(t.widthOver(t.section()));
    }

    @Override
    public Verdict.Refused why(Trial t) {
        Length wide = t.widthOver(t.section());
        Length missing = shortBy(t);
        return new Verdict.Refused(
                name(),
                Words.atLeast(missing) + " too narrow " + t.need().arrangement().word() + ": " + Words.atMost(wide)
                        + " wide once its edges are straight, "
                        + Words.atLeast(t.need().width()) + " needed"
                        + otherWay(t).map("; "::concat).orElse(""),
                missing);
    }

    private Optional<String> otherWay(Trial t) {
        Length bareWidth = t.need()
                .design()
                .neckWidth()
                .plus(t.need().design().sideAllowance().length());
        if (t.neck() && t.need().width().isLongerThan(bareWidth) && !bareWidth.isLongerThan(t.widthOver(t.section()))) {
            boolean overlaid = Way.of(t.need().design()).stream()
                    .filter(w -> w.arrangement() != t.need().arrangement())
                    .anyMatch(w -> fits(t.with(w.neck())));
            return Optional.of(overlaid ? "fits overlaid" : "would fit with wings");
        }
        return Optional.empty();
    }
}
