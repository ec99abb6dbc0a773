package org.scarfwright.matching;

import org.scarfwright.measure.Length;

/** The section is thick enough once both its faces are flat and planed. */
record ThicknessRule() implements PartRule {
    @Override
    public String name() {
        return "thickness";
    }

    @Override
    public boolean fits(Trial t) {
        return !t.sawn().isLongerThan(t.thicknessOver(t.section()))
                && !t.need().thickness().isLongerThan(t.sawn());
    }

    @Override
    public Length shortBy(Trial t) {
        Length over = t.thicknessOver(t.section());
        return t.sawn().isLongerThan(over)
                ? t.sawn().max(t.need().thickness()).minus(over.min(t.sawn()))
                : t.need().thickness().minus(t.sawn());
    }

    @Override
    public Verdict.Refused why(Trial t) {
        Length needed = t.sawn().max(t.need().thickness());
        Length left = t.thicknessOver(t.section()).min(t.sawn());
        if (!t.sawn().isLongerThan(t.thicknessOver(t.section()))) {
            Length thin = shortBy(t);
            return new Verdict.Refused(
                    name(), Words.atLeast(thin) + " too thin when the piece is brought to " + Words.mm(t.sawn()), thin);
        }
        Length missing = shortBy(t);
        return new Verdict.Refused(
                name(),
                Words.atLeast(missing) + " too thin for a " + t.need().title() + ": " + Words.atMost(left)
                        + " left once " + Words.mm(t.section()) + " of it is flat, " + Words.atLeast(needed)
                        + " needed",
                missing);
    }
}
