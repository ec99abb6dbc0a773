package org.scarfwright.matching;

import java.util.List;
import java.util.Locale;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Defect;

/** Structural defects leave a clear stretch that is long enough. Where the whole piece is too short, the length rule tells. */
record DefectRule() implements PartRule {
    @Override
    public String name() {
        return "defect";
    }

    @Override
    public boolean fits(Trial t) {
        return !t.section().isLongerThan(t.longestZone()) || t.section().isLongerThan(LengthRule.betweenTrims(t));
    }

    @Override
    public Length shortBy(Trial t) {
        return t.section().minus(t.longestZone());
    }

    @Override
    public Verdict.Refused why(Trial t) {
        List<String> flaws = t.piece().defects().stream()
                .filter(Defect::structural)
                .map(d -> "a "
                        + d.kind()
                                .name()
                                .toLowerCase(Locale.ROOT)
                                .replace('_', ' ')
                                .replace("other", "flaw") + " at " + number(d.fromLength()) + " to "
                        + Words.mm(d.toLength()))
                .toList();
        Length missing = shortBy(t);
        return new Verdict.Refused(
                name(),
                Words.list(flaws) + " " + (flaws.size() == 1 ? "leaves" : "leave") + " " + Words.atMost(t.longestZone())
                        + " clear, " + Words.atLeast(missing) + " too short "
                        + t.need().arrangement().word(),
                missing);
    }

    private static String number(Length length) {
        return Words.mm(length).replace(" mm", "");
    }
}
