package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.List;

/** All rules about one part on one piece. */
final class PartRules {
    /** In the order they are told. */
    static final List<PartRule> ALL = List.of(
            new FreeRule(),
            new LotReadyRule(),
            new WoodRule(),
            new MoistureRangeRule(),
            new SetAsideRule(),
            new GrainSlopeRule(),
            new SawRule(),
            new LengthRule(),
            new DefectRule(),
            new WidthRule(),
            new StraightnessRule(),
            new ThicknessRule(),
            new ShortestMachinedRule());

    /** Those that ask about the wood itself, not about its moisture, its lot and who holds it. */
    static final List<PartRule> OF_WOOD = ALL.stream()
            .filter(r -> !(r instanceof FreeRule || r instanceof LotReadyRule || r instanceof MoistureRangeRule))
            .toList();

    private PartRules() {}

    static boolean allFit(Trial trial) {
        for (PartRule rule : ALL) {
            if (!rule.fits(trial)) {
                return false;
            }
        }
        return true;
    }

    static List<Verdict.Refused> refusals(Trial trial) {
        List<Verdict.Refused> refused = new ArrayList<>();
        for (PartRule rule : ALL) {
            if (!rule.fits(trial)) {
                refused.add(rule.why(trial));
            }
        }
        return refused;
    }

    static List<String> notes(Trial trial) {
        return ALL.stream().flatMap(rule -> rule.note(trial).stream()).toList();
    }
}
