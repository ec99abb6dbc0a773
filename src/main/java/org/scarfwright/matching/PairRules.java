package org.scarfwright.matching;

import java.util.List;
import java.util.Optional;

/** All rules about the two pieces of one neck. */
final class PairRules {
    /** In the order they are told. */
    static final List<PairRule> ALL = List.of(
            new SamePieceRule(), new LotRule(), new MatchedWoodRule(), new LinesMeetRule(), new MoisturePairRule());

    private PairRules() {}

    static boolean allFit(PairTrial trial) {
        return firstRefusal(trial).isEmpty();
    }

    static Optional<Verdict.Refused> firstRefusal(PairTrial trial) {
        for (PairRule rule : ALL) {
            if (rule.judge(trial) instanceof Verdict.Refused refused) {
                return Optional.of(refused);
            }
        }
        return Optional.empty();
    }
}
