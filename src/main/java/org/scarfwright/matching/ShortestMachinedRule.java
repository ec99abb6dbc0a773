package org.scarfwright.matching;

import java.util.Optional;
import org.scarfwright.measure.Length;

/**
 * A machine never holds a piece that is shorter than it can hold safely. A long piece is brought to thickness as a whole and
 * crosscut last; what warp is left in a short section then comes off by hand or on a carrier. A piece that is itself shorter
 * than the machine holds never goes on it: all that must come off comes off by hand, and the part is refused when that is more
 * than {@link #BY_HAND}.
 */
record ShortestMachinedRule() implements PartRule {
    /** The most that is sensibly taken off a short piece by hand, both faces together. Common practice, no published source. */
    static final Length BY_HAND = Length.ofMm(6);

    @Override
    public String name() {
        return "shortest machined";
    }

    @Override
    public boolean fits(Trial t) {
        return !tooShortForMachine(t) || !byHand(t).isLongerThan(BY_HAND);
    }

    @Override
    public Length shortBy(Trial t) {
        return t.shop().settings().shortestMachined().minus(t.piece().length().length());
    }

    @Override
    public Verdict.Refused why(Trial t) {
        Length missing = shortBy(t);
        return new Verdict.Refused(
                name(),
                "at " + Words.mm(t.piece().length().length()) + " it is " + Words.atLeast(missing)
                        + " shorter than the planer may hold, and " + Words.atLeast(byHand(t))
                        + " is more than comes off by hand (" + Words.mm(BY_HAND) + ")",
                missing);
    }

    @Override
    public Optional<String> note(Trial t) {
        Length shortest = t.shop().settings().shortestMachined();
        if (tooShortForMachine(t)) {
            return Optional.of("Take " + t.piece().code() + " to thickness by hand or on a carrier: at "
                    + Words.mm(t.piece().length().length()) + " it is shorter than the " + Words.mm(shortest)
                    + " the planer may hold.");
        }
        if (t.section().isShorterThan(shortest)) {
            return Optional.of("Plane " + t.piece().code() + " long and crosscut it last; finish the "
                    + Words.mm(t.section()) + " section by hand or on a carrier, never alone on the planer.");
        }
        return Optional.empty();
    }

    private static boolean tooShortForMachine(Trial t) {
        return t.piece().length().length().isShorterThan(t.shop().settings().shortestMachined());
    }

    private static Length byHand(Trial t) {
        return t.piece().thickness().length().minus(t.need().thickness());
    }
}
