package org.scarfwright.matching.search;

import java.util.EnumMap;
import java.util.Map;
import org.scarfwright.matching.search.SearchResult.Measure;

/** The best plan so far and what is proved of it, told to whoever watches. */
final class Incumbent {
    private final SearchClock clock;
    private final Map<Measure, Long> bounds = new EnumMap<>(Measure.class);
    private Measure level = Measure.FILLED;
    private CutPlan plan = CutPlan.NOTHING;

    Incumbent(SearchClock clock) {
        this.clock = clock;
    }

    CutPlan plan() {
        return plan;
    }

    void offer(CutPlan other) {
        if (CutPlan.BETTER.compare(other, plan) < 0) {
            plan = other;
            tell();
        }
    }

    /** The search goes on with this level. */
    void turnTo(Measure next) {
        level = next;
        tell();
    }

    /** No plan is better than this on that level. */
    void bound(Measure measure, long bound) {
        Long before = bounds.put(measure, bound);
        if (before == null || before != bound) {
            tell();
        }
    }

    private void tell() {
        clock.tell(new SearchProgress(level, plan.pairs().size(), plan.values(), bounds, clock.seconds()));
    }
}
