package org.scarfwright.matching;

/** What the piece of the neck and the piece of the head must have in common. */
sealed interface PairRule permits MatchedWoodRule, LotRule, SamePieceRule, LinesMeetRule, MoisturePairRule {
    /** As the API and the pages call it. */
    String name();

    Verdict judge(PairTrial trial);
}
