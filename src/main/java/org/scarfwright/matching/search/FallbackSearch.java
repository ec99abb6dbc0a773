package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Status;

/**
 * The search without native solvers: a plan made and improved neck by neck, and a bound that holds but is weak. It proves a
 * plan best only when the bound happens to be met.
 */
public final class FallbackSearch implements MatchSearch {
    /** Name of this search in a result. */
    public static final String ENGINE = "pure Java";

    private static final int TURNS = 20;
    private static final int ROUNDS = 200;

    @Override
    public SearchResult solve(SearchProblem problem, Duration limit, SearchWatch watch) {
        SearchClock clock = new SearchClock(limit, watch);
        Incumbent best = new Incumbent(clock);
        Improver improver = new Improver(problem);
        improver.fill(clock);
        best.offer(improver.plan());
        best.turnTo(Measure.BOOK_VALUE);
        for (int i = 0; i < TURNS && !clock.over(); i++) {
            improver.improve(ROUNDS, clock);
            best.offer(improver.plan());
        }
        CutPlan plan = improver.plan();
        Map<Measure, Long> bounds = bounds(new RackModel(problem), plan, clock);
        List<Level> levels = new ArrayList<>();
        boolean proved = true;
        for (Measure m : Measure.values()) {
            Level level = new Level(m, plan.value(m), bounds.getOrDefault(m, 0L));
            proved &= level.proved();
            levels.add(level);
        }
        Status status = proved ? Status.PROVED : Status.GAP;
        return new SearchResult(status, levels, plan.layouts(), plan.pairs(), ENGINE, clock.seconds());
    }

    private static Map<Measure, Long> bounds(RackModel model, CutPlan plan, SearchClock clock) {
        Map<Measure, Long> bounds = new EnumMap<>(Measure.class);
        long filled = plan.value(Measure.FILLED);
        bounds.put(Measure.FILLED, model.fillableWeight());
        Prices none = new Prices(Measure.BOOK_VALUE, new long[model.supplies], 0);
        long low = clock.over()
                ? PriceBound.lowest(model) * Prices.ONE
                : new PriceBound(model).price(none, filled, new ArrayList<>());
        bounds.put(Measure.BOOK_VALUE, Math.min(plan.value(Measure.BOOK_VALUE), Math.floorDiv(low, Prices.ONE)));
        long some = filled > 0 ? 1 : 0;
        bounds.put(Measure.PIECES, some);
        bounds.put(Measure.SET_UPS, some);
        return bounds;
    }
}
