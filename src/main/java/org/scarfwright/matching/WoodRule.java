package org.scarfwright.matching;

/** Every strip of the piece is of a wood the design asks for. */
record WoodRule() implements PartRule {
    @Override
    public String name() {
        return "wood";
    }

    @Override
    public boolean fits(Trial t) {
        return t.need().woods().isEmpty()
                || t.need().woods().containsAll(t.piece().wood().speciesIds());
    }

    @Override
    public Verdict.Refused why(Trial t) {
        return new Verdict.Refused(
                name(),
                "it is " + t.shop().woods().all(t.piece().wood().speciesIds()) + ", and the "
                        + Words.role(t.need().role()) + " asks for "
                        + t.shop().woods().any(t.need().woods()),
                null);
    }
}
