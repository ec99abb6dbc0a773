package org.scarfwright.matching.search;

/** The best plan so far. */
final class Incumbent {
    private CutPlan plan = CutPlan.NOTHING;

    CutPlan plan() {
        return plan;
    }

    void offer(CutPlan other) {
        if (CutPlan.BETTER.compare(other, plan) < 0) {
            plan = other;
        }
    }
}
