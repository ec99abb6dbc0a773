package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.scarfwright.matching.search.LinearSolver.Outcome;
import org.scarfwright.matching.search.LinearSolver.Solution;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Status;

/**
 * The search with the native solvers. Level by level, each with the levels before it held at what was proved best:
 *
 * <ol>
 *   <li>A plan made and improved neck by neck gives the first upper figure.
 *   <li>Fulfilment and book value: columns are generated until no layout is cheaper than its prices say, which gives a bound
 *       ({@link PriceBound}); a master program over the columns seen gives a better plan; then every layout that a better
 *       plan can use is enumerated, in a window that grows, and the master over them proves the optimum or improves it.
 *   <li>Pieces, set-ups and wood planed away are whole programs over every layout that can occur in a plan of the best book
 *       value, so nothing is missed there.
 * </ol>
 *
 * Source: column generation after Gilmore and Gomory, 1961; solving by enumerating the columns inside the gap after Baldacci,
 * Christofides and Mingozzi, 2008 (both cited from memory).
 */
public final class OrToolsSearch implements MatchSearch {
    /** Name of this search in a result. */
    public static final String ENGINE = "OR-Tools: GLOP and SCIP";

    private static final int IMPROVING_ROUNDS = 400;
    private static final int MOST_COLUMNS = 60_000;

    private final LinearSolver solver;
    private final int mostColumns;

    /**
     * The search with the native solvers of this machine.
     *
     * @throws IllegalStateException when they cannot be used; see {@link NativeSolver#usable()}
     */
    public OrToolsSearch() {
        this(NativeSolver.get(), MOST_COLUMNS);
    }

    /** @param mostColumns most layouts listed at once; with fewer than a proof needs there is a plan and a bound */
    OrToolsSearch(LinearSolver solver, int mostColumns) {
        this.solver = solver;
        this.mostColumns = mostColumns;
    }

    @Override
    public SearchResult solve(SearchProblem problem, Duration limit, BooleanSupplier cancelled) {
        return new Run(problem, new SearchClock(limit, cancelled)).solve();
    }

    private final class Run {
        private final SearchProblem problem;
        private final SearchClock clock;
        private final RackModel model;
        private final Map<Measure, Long> held = new EnumMap<>(Measure.class);
        private final Map<Measure, Long> bounds = new EnumMap<>(Measure.class);
        private final Set<SiteLayout> pool = new LinkedHashSet<>();
        private List<SiteLayout> complete = List.of();
        private boolean allListed;
        private CutPlan best = CutPlan.NOTHING;

        Run(SearchProblem problem, SearchClock clock) {
            this.problem = problem;
            this.clock = clock;
            model = new RackModel(problem);
        }

        SearchResult solve() {
            Improver improver = new Improver(problem);
            improver.fill(clock);
            improver.improve(IMPROVING_ROUNDS, clock);
            offer(improver.plan());
            boolean proved = true;
            for (Measure level : Measure.values()) {
                if (proved) {
                    proved = switch (level) {
                        case FILLED, BOOK_VALUE -> generated(level);
                        case PIECES, SET_UPS, PLANED -> over(level);
                    };
                    held.put(level, best.value(level));
                } else {
                    bounds.put(level, level == Measure.PIECES && best.value(Measure.FILLED) > 0 ? 1L : 0L);
                }
            }
            return result(proved);
        }

        private SearchResult result(boolean proved) {
            List<Level> levels = new ArrayList<>();
            for (Measure m : Measure.values()) {
                levels.add(new Level(m, best.value(m), bounds.getOrDefault(m, 0L)));
            }
            return new SearchResult(
                    proved ? Status.PROVED : Status.GAP, levels, best.layouts(), best.pairs(), ENGINE, clock.seconds());
        }

        private void offer(CutPlan plan) {
            if (CutPlan.BETTER.compare(plan, best) < 0) {
                best = plan;
            }
        }

        /** The level's value of the best plan, to be minimised. */
        private long value(Measure level) {
            return level == Measure.FILLED ? -best.value(level) : best.value(level);
        }

        private void bound(Measure level, long minimised) {
            bounds.put(level, level == Measure.FILLED ? -minimised : minimised);
        }

        private boolean generated(Measure level) {
            if (level == Measure.FILLED && -value(level) == model.fillableWeight()) {
                bound(level, value(level));
                return true;
            }
            pool.addAll(Choice.of(model, best).layouts().keySet());
            PriceBound prices = new PriceBound(model);
            long needed = held.getOrDefault(Measure.FILLED, 0L);
            long scaled = Long.MIN_VALUE;
            Prices bestPrices = null;
            while (!clock.over()) {
                Master master = new Master(model, List.copyOf(pool), level, held);
                Solution lp = solver.relax(master.program, clock.leftMillis());
                if (lp.outcome() != Outcome.OPTIMAL) {
                    break;
                }
                List<SiteLayout> found = new ArrayList<>();
                Prices now = master.prices(lp.duals());
                long bound = prices.price(now, needed, found);
                if (bound > scaled || bestPrices == null) {
                    scaled = bound;
                    bestPrices = now;
                }
                if (!pool.addAll(found)) {
                    break;
                }
            }
            if (bestPrices == null) {
                bound(level, level == Measure.FILLED ? -model.fillableWeight() : 0);
                return false;
            }
            return enumerated(level, prices, bestPrices, needed);
        }

        private boolean enumerated(Measure level, PriceBound prices, Prices with, long needed) {
            long scaled = prices.price(with, needed, new ArrayList<>());
            long low = ceil(scaled);
            bound(level, Math.min(low, value(level)));
            if (low < value(level)) {
                Master master = new Master(model, List.copyOf(pool), level, held);
                take(
                        master,
                        solver.optimise(
                                master.program,
                                master.hint(Choice.of(model, best)),
                                clock.leftMillis() / 4,
                                clock.cancelled()));
            }
            while (low < value(level) && !clock.over()) {
                long gap = value(level) * Prices.ONE - scaled;
                Optional<List<SiteLayout>> inside = prices.within(gap, mostColumns);
                while (inside.isEmpty() && gap > 0) {
                    gap /= 2;
                    inside = prices.within(gap, mostColumns);
                }
                if (inside.isEmpty()) {
                    break; // more layouts than fit touch the bound itself: nothing can be proved this way
                }
                Set<SiteLayout> columns = new LinkedHashSet<>(inside.get());
                columns.addAll(Choice.of(model, best).layouts().keySet());
                Master master = new Master(model, List.copyOf(columns), level, held);
                Solution s = solver.optimise(
                        master.program, master.hint(Choice.of(model, best)), clock.leftMillis(), clock.cancelled());
                long before = value(level);
                take(master, s);
                long inWindow = safe(s.bound(), value(level));
                long outside = Math.floorDiv(scaled + gap, Prices.ONE) + 1;
                low = Math.max(low, Math.min(inWindow, outside));
                bound(level, Math.min(low, value(level)));
                if (s.outcome() != Outcome.OPTIMAL || (before == value(level) && low < value(level))) {
                    break;
                }
            }
            if (low < value(level)) {
                return false;
            }
            bound(level, value(level));
            if (level == Measure.BOOK_VALUE) {
                Optional<List<SiteLayout>> all = prices.within(value(level) * Prices.ONE - scaled, mostColumns);
                allListed = all.isPresent();
                complete = all.orElse(List.of());
            }
            return true;
        }

        private boolean over(Measure level) {
            Set<SiteLayout> columns = new LinkedHashSet<>(allListed ? complete : pool);
            columns.addAll(Choice.of(model, best).layouts().keySet());
            Master master = new Master(model, List.copyOf(columns), level, held);
            Solution s = solver.optimise(
                    master.program, master.hint(Choice.of(model, best)), clock.leftMillis(), clock.cancelled());
            take(master, s);
            // A bound over some of the layouts says nothing about the others.
            long low = allListed ? Math.max(0, safe(s.bound(), value(level))) : level == Measure.PIECES ? 1 : 0;
            bound(level, Math.min(low, value(level)));
            return low >= value(level);
        }

        private void take(Master master, Solution s) {
            if (s.hasValues()) {
                offer(PlanWriter.write(model, master.choice(s.values())));
            }
        }

        private static long ceil(long scaled) {
            return -Math.floorDiv(-scaled, Prices.ONE);
        }

        /**
         * A solver's bound as a whole number that is not too high. Costs are whole, and the solver works to 1e-6 in every
         * column, of which a plan uses some dozens: 1e-6 and a hundred-millionth of the value covers what it may be off.
         */
        private static long safe(double bound, long value) {
            if (!(bound > -9e15)) {
                return Long.MIN_VALUE;
            }
            return (long) Math.ceil(bound - 1e-6 - 1e-8 * Math.abs(value));
        }
    }
}
