package org.scarfwright.matching.search;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * What a master program minimises: levels, each times a whole weight. Fulfilment counts with its sign changed.
 *
 * <p>Two uses besides a single level. <b>In order</b>: small counts behind a level are settled in the same program, exactly,
 * when a unit of the level weighs more than all of the counts together can. <b>Anchored</b>: where the book value is held at its
 * optimum, every plan allowed has the same book value, so adding it any number of times changes nothing but the relaxation,
 * which then follows the tight level instead of spending the slack between the relaxed and the real optimum.
 */
record Objective(Map<Measure, Long> weights) {
    /** Above this the native solver's relative tolerances could hide one unit of the last level. */
    private static final double LARGEST = 1e9;

    Objective {
        weights = Map.copyOf(weights);
    }

    static Objective of(Measure level) {
        return new Objective(Map.of(level, 1L));
    }

    /**
     * A level and the counts after it, in order.
     *
     * @param value what the level is now
     * @param most what each of the counts can be at most
     * @return the level alone when the weights would grow too large
     */
    static Objective inOrder(Measure level, long value, List<Measure> counts, List<Long> most) {
        EnumMap<Measure, Long> weights = new EnumMap<>(Measure.class);
        long unit = 1;
        for (int i = counts.size() - 1; i >= 0; i--) {
            weights.put(counts.get(i), unit);
            unit *= most.get(i) + 1;
        }
        weights.put(level, unit);
        return (double) unit * Math.max(1, Math.abs(value)) > LARGEST ? of(level) : new Objective(weights);
    }

    /** A level after the book value, with the book value added so often that it leads. */
    static Objective anchored(Measure level, long value, long bookValue) {
        long times = 10 * Math.max(1, value / Math.max(1, Math.abs(bookValue)));
        if ((double) times * Math.abs(bookValue) + value > LARGEST) {
            return of(level);
        }
        return new Objective(Map.of(level, 1L, Measure.BOOK_VALUE, times));
    }

    long weight(Measure measure) {
        return weights.getOrDefault(measure, 0L);
    }

    boolean counts(Measure measure) {
        return weights.containsKey(measure);
    }

    /** A plan's value. */
    long of(CutPlan plan) {
        long sum = 0;
        for (Map.Entry<Measure, Long> w : weights.entrySet()) {
            long value = plan.value(w.getKey());
            sum += w.getValue() * (w.getKey() == Measure.FILLED ? -value : value);
        }
        return sum;
    }

    /** What is added to the level itself in a plan. */
    private long besides(Measure level, CutPlan plan) {
        return of(plan) - weight(level) * (level == Measure.FILLED ? -plan.value(level) : plan.value(level));
    }

    /**
     * A bound of the level from a bound of the whole.
     *
     * @param bound of the whole, from the native solver
     * @param plan the best plan
     * @param most what the rest of the objective can be at most in a plan worth finding: the plan's own share where that is
     *     held, all counts at their most where the level comes first
     * @return a whole number that is not too high
     */
    long bound(Measure level, double bound, CutPlan plan, long most) {
        if (!(bound > -9e15)) {
            return Long.MIN_VALUE;
        }
        long whole = (long) Math.ceil(bound - 1e-6 - 1e-8 * Math.abs(of(plan)));
        return -Math.floorDiv(-(whole - most), weight(level));
    }

    /** The share of everything but the level, where it is the same in all plans allowed. */
    long fixed(Measure level, CutPlan plan) {
        return besides(level, plan);
    }
}
