package org.scarfwright.matching;

import java.util.List;

/** A saw of the shop makes this cut: angle, depth through the piece on edge, reach along the bevel. */
record SawRule() implements PartRule {
    @Override
    public String name() {
        return "saw";
    }

    @Override
    public boolean fits(Trial t) {
        return ShopRules.refusals(t.saw(), t.piece(), t.sawn(), t.need().angle())
                .isEmpty();
    }

    @Override
    public Verdict.Refused why(Trial t) {
        List<String> reasons = t.shop().saws().stream()
                .map(s -> s.name() + " "
                        + String.join(
                                ", and ",
                                ShopRules.refusals(
                                        s, t.piece(), t.sawn(), t.need().angle())))
                .toList();
        return new Verdict.Refused(name(), "no saw makes the cut: " + String.join("; ", reasons), null);
    }
}
