package org.scarfwright.matching;

/** A piece laid aside as warped is for heads only, unless a person allowed it as a neck: wood that moved once moves again. */
record SetAsideRule() implements PartRule {
    @Override
    public String name() {
        return "set aside";
    }

    @Override
    public boolean fits(Trial t) {
        return !t.neck() || !t.piece().setAside() || t.piece().neckAllowed();
    }

    @Override
    public Verdict.Refused why(Trial t) {
        return new Verdict.Refused(
                name(), "it was set aside as warped and is for heads only, unless you allow it as a neck", null);
    }
}
