package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.LinearSolver.Outcome;
import org.scarfwright.matching.search.LinearSolver.Relaxation;
import org.scarfwright.matching.search.LinearSolver.Solution;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * One level whose layouts are too many to list: a bound by column generation, then proof by listing every layout a better plan
 * can use.
 *
 * <p>Let B be the bound of the last prices and u the best plan's value. Only layouts within u - B of their piece's cheapest can
 * be in a better plan ({@link PriceBound}). They are listed from a narrow window outward: when the best plan over the layouts
 * within w is worth at most B + w, no layout outside can do better, and it is best.
 */
final class ColumnSearch {
    private static final int FIRST_WINDOW = 1_500;
    private static final int WIDEN = 6;
    /** With more pieces than this, recutting brings a better plan sooner than the whole program does. */
    private static final int MANY_PIECES = 100;

    private static final int PATIENCE = 12;

    private final RackModel model;
    private final LinearSolver solver;
    private final SearchClock clock;
    private final Measure level;
    private final Map<Measure, Long> held;
    private final Incumbent best;
    private final int mostColumns;
    private final PriceBound prices;
    private final Set<SiteLayout> pool = new LinkedHashSet<>();

    private long scaled = Long.MIN_VALUE;
    private Prices given;
    private long nodes = -1;
    private long low;
    private boolean proved;

    ColumnSearch(
            RackModel model,
            LinearSolver solver,
            SearchClock clock,
            Measure level,
            Map<Measure, Long> held,
            Incumbent best,
            int mostColumns) {
        this.model = model;
        this.solver = solver;
        this.clock = clock;
        this.level = level;
        this.held = held;
        this.best = best;
        this.mostColumns = mostColumns;
        prices = new PriceBound(model);
        given = new Prices(level, new long[model.supplies], 0);
    }

    /** Best value the level can have, its sign changed for fulfilment. */
    long bound() {
        return Math.min(low, value());
    }

    /** The level's value in the best plan, to be minimised. */
    private long value() {
        return level == Measure.FILLED ? -best.plan().value(level) : best.plan().value(level);
    }

    /**
     * Runs until the level is proved or time is over.
     *
     * @param objective the level first
     * @param besides what the objective's other levels can add up to at most
     * @return whether the objective is proved best
     */
    boolean run(Objective objective, long besides) {
        low = level == Measure.FILLED ? -model.fillableWeight() : PriceBound.lowest(model);
        generate();
        if (scaled == Long.MIN_VALUE) {
            return false;
        }
        low = Math.max(low, -Math.floorDiv(-scaled, Prices.ONE));
        if (level == Measure.FILLED && low >= value()) {
            return true;
        }
        if (level == Measure.BOOK_VALUE && model.problem.pieces().size() > MANY_PIECES && !clock.over()) {
            long gap = value() * Prices.ONE - scaled;
            Recutting.within(prices, gap, solver, given, pool).improve(best, clock, PATIENCE);
        }
        int most = Math.min(mostColumns, FIRST_WINDOW);
        while (!proved && !clock.over()) {
            if (!window(objective, besides, most)) {
                break;
            }
            most = (int) Math.min(mostColumns, (long) most * WIDEN);
        }
        return proved;
    }

    /**
     * Looks for a better plan among the layouts that given prices leave, with no claim that there is none.
     *
     * @param mostNodes where the master program gives up
     */
    void glance(Prices at, long mostNodes) {
        nodes = mostNodes;
        low = Long.MIN_VALUE;
        scaled = prices.price(at, needed(), new ArrayList<>());
        if (value() * Prices.ONE > scaled) {
            window(Objective.of(level), 0, mostColumns);
        }
    }

    /** Column generation: the relaxed master says what parts are worth, pricing finds layouts worth more than they cost. */
    private void generate() {
        pool.addAll(Choice.of(model, best.plan()).layouts().keySet());
        @Nullable Prices bestPrices = null;
        Master master = new Master(model, pool, Objective.of(level), held);
        try (Relaxation relaxation = solver.relaxation(master.program)) {
            bestPrices = generate(master, relaxation);
        }
        if (bestPrices != null) {
            given = bestPrices;
            scaled = prices.price(bestPrices, needed(), new ArrayList<>());
        }
    }

    private @Nullable Prices generate(Master master, Relaxation relaxation) {
        @Nullable Prices bestPrices = null;
        boolean last = false;
        while (!last && !clock.over()) {
            Solution relaxed = relaxation.solve(clock.leftMillis());
            if (relaxed.outcome() != Outcome.OPTIMAL) {
                break;
            }
            List<SiteLayout> found = new ArrayList<>();
            Prices now = master.prices(relaxed.duals());
            long bound = prices.price(now, needed(), found);
            if (bound > scaled) {
                scaled = bound;
                bestPrices = now;
                tell(-Math.floorDiv(-scaled, Prices.ONE));
            }
            found.removeIf(x -> !pool.add(x));
            master.add(found);
            last = found.isEmpty();
        }
        return bestPrices;
    }

    private void tell(long proved) {
        long known = Math.min(Math.max(low, proved), value());
        best.bound(level, level == Measure.FILLED ? -known : known);
    }

    private long needed() {
        return held.getOrDefault(Measure.FILLED, 0L);
    }

    /** One window; false when the search cannot go on. */
    private boolean window(Objective objective, long besides, int most) {
        long width = value() * Prices.ONE - scaled;
        Optional<List<SiteLayout>> inside = prices.within(width, most);
        while (inside.isEmpty() && width > 0) {
            width = width * 2 / 3;
            inside = prices.within(width, most);
        }
        if (inside.isEmpty()) {
            // More layouts than fit touch the bound itself: nothing is proved this way, but a plan may be found.
            if (most == mostColumns) {
                solve(List.copyOf(pool), objective);
            }
            return most < mostColumns;
        }
        Solution s = solve(inside.get(), objective);
        long outside = Math.floorDiv(scaled + width, Prices.ONE) + 1;
        long within = objective.bound(level, s.bound(), best.plan(), besides);
        low = Math.max(low, Math.min(within, outside));
        tell(low);
        if (s.outcome() != Outcome.OPTIMAL) {
            return false;
        }
        proved = value() < outside;
        return proved || most < mostColumns;
    }

    private Solution solve(List<SiteLayout> columns, Objective objective) {
        Choice hint = Choice.of(model, best.plan());
        Set<SiteLayout> all = new LinkedHashSet<>(columns);
        all.addAll(hint.layouts().keySet());
        Master master = new Master(model, List.copyOf(all), objective, held);
        Solution s = solver.optimise(master.program, master.hint(hint), clock.limits(nodes));
        if (s.hasValues()) {
            best.offer(PlanWriter.write(model, master.choice(s.values())));
        }
        return s;
    }

    /** Every layout that can be in a plan of the best value; nothing when there are too many to list. */
    Optional<List<SiteLayout>> complete() {
        return prices.within(value() * Prices.ONE - scaled, mostColumns);
    }

    /** The layouts met on the way to the bound. */
    List<SiteLayout> met() {
        return List.copyOf(pool);
    }
}
