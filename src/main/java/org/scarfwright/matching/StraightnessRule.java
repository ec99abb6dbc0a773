package org.scarfwright.matching;

import java.util.Optional;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.UsableSize;

/** A neck as sawn is straight enough before planing, because a blank that moved once tends to move again. */
record StraightnessRule() implements PartRule {
    @Override
    public String name() {
        return "straightness";
    }

    @Override
    public boolean fits(Trial t) {
        return !t.neck() || !out(t).isLongerThan(t.shop().settings().neckStraightness());
    }

    @Override
    public Length shortBy(Trial t) {
        return out(t).minus(t.shop().settings().neckStraightness());
    }

    @Override
    public Verdict.Refused why(Trial t) {
        Length over = shortBy(t);
        return new Verdict.Refused(
                name(),
                "a neck from it is out of straight by " + Words.atLeast(out(t)) + " "
                        + t.need().arrangement().word() + ", " + Words.atLeast(over) + " more than a neck may be",
                over);
    }

    /** Told for heads as well: a piece whose warp nobody measured counts as flat in every rule. */
    @Override
    public Optional<String> note(Trial t) {
        return t.piece().warp().isMeasured()
                ? Optional.empty()
                : Optional.of("The warp of " + t.piece().code()
                        + " was never measured and counts as none: sight along it before cutting.");
    }

    private static Length out(Trial t) {
        return UsableSize.straightness(t.piece(), t.longSide());
    }
}
