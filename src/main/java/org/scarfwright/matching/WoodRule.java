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
                "it is "
                        + Words.list(t.piece().wood().speciesIds().stream()
                                .distinct()
                                .map(Words::wood)
                                .toList())
                        + ", and the " + Words.role(t.need().role()) + " asks for "
                        + Words.woods(t.need().woods()),
                null);
    }
}
