package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
 *   <li>On a large rack the book value is not proved best but brought near its bound ({@link CoarseSearch}), and the levels
 *       after it are taken as they come.
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

    private static final int IMPROVING_TURNS = 10;
    private static final int IMPROVING_ROUNDS = 100;
    private static final int MOST_COLUMNS = 60_000;
    /** One part in so many of the time is for fulfilment on a large rack. */
    private static final int FILLING_SHARE = 3;

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
    public SearchResult solve(SearchProblem problem, Duration limit, SearchWatch watch) {
        return new Run(problem, new SearchClock(limit, watch)).solve();
    }

    private final class Run {
        private final SearchProblem problem;
        private final SearchClock clock;
        private final RackModel model;
        private final boolean large;
        private final Sellers sellers;
        private final Map<Measure, Long> held = new EnumMap<>(Measure.class);
        private final Map<Measure, Long> bounds = new EnumMap<>(Measure.class);
        private final Incumbent best;
        /** Layouts the last levels choose from. */
        private List<SiteLayout> layouts = List.of();
        /** They are every layout of a plan that is best so far. */
        private boolean allListed;

        Run(SearchProblem problem, SearchClock clock) {
            this.problem = problem;
            this.clock = clock;
            best = new Incumbent(clock);
            model = new RackModel(problem);
            large = PriceBound.large(model);
            sellers = new Sellers(model);
        }

        SearchResult solve() {
            if (large) {
                begin();
            } else {
                improve();
            }
            fill();
            bookValue();
            for (Measure level : List.of(Measure.PIECES, Measure.SET_UPS, Measure.PLANED)) {
                if (!held.containsKey(level)) {
                    overLayouts(level);
                }
            }
            return result();
        }

        private void improve() {
            Improver improver = new Improver(problem);
            improver.fill(clock);
            best.offer(improver.plan());
            for (int i = 0; i < IMPROVING_TURNS && !clock.over(); i++) {
                improver.improve(IMPROVING_ROUNDS, clock);
                best.offer(improver.plan());
            }
        }

        /** A plan from the pieces that lend themselves to it; from all where these do not give everything. */
        private void begin() {
            BitSet among = new BitSet();
            sellers.bundles().stream()
                    .forEach(b -> model.bundles.get(b).pieces().forEach(among::set));
            Improver few = new Improver(problem, among);
            few.fill(clock);
            best.offer(few.plan());
            if (best.plan().value(Measure.FILLED) < model.fillableWeight() && !clock.over()) {
                Improver all = new Improver(problem);
                all.fill(clock);
                best.offer(all.plan());
            }
        }

        private void fill() {
            long most = model.fillableWeight();
            if (best.plan().value(Measure.FILLED) < most) {
                // On a large rack this may not end, and the book value wants its time too.
                SearchClock own = large ? clock.within(Duration.ofMillis(clock.leftMillis() / FILLING_SHARE)) : clock;
                ColumnSearch search = new ColumnSearch(model, solver, own, Measure.FILLED, held, best, mostColumns);
                search.run(Objective.of(Measure.FILLED), 0);
                most = -search.bound();
            }
            bound(Measure.FILLED, most);
            hold(Measure.FILLED);
        }

        private void bookValue() {
            best.turnTo(Measure.BOOK_VALUE);
            if (large) {
                Optional<Long> bound = new CoarseSearch(model, sellers, solver, clock, best).run();
                bound(Measure.BOOK_VALUE, bound.orElse(PriceBound.lowest(model)));
                hold(Measure.BOOK_VALUE);
                return;
            }
            ColumnSearch search = new ColumnSearch(model, solver, clock, Measure.BOOK_VALUE, held, best, mostColumns);
            long pieces = Math.min(problem.pieces().size(), 2 * necks());
            long setUps = Math.min(problem.setUps(), 2 * necks());
            Objective objective = Objective.inOrder(
                    Measure.BOOK_VALUE,
                    best.plan().value(Measure.BOOK_VALUE),
                    List.of(Measure.PIECES, Measure.SET_UPS),
                    List.of(pieces, setUps));
            long besides = objective.weight(Measure.PIECES) * pieces + objective.weight(Measure.SET_UPS) * setUps;
            boolean proved = search.run(objective, besides);
            bound(Measure.BOOK_VALUE, search.bound());
            hold(Measure.BOOK_VALUE);
            layouts = search.met();
            if (!proved) {
                return;
            }
            bound(Measure.BOOK_VALUE, best.plan().value(Measure.BOOK_VALUE));
            Optional<List<SiteLayout>> all = search.complete();
            allListed = all.isPresent();
            layouts = all.orElse(layouts);
            for (Measure settled : List.of(Measure.PIECES, Measure.SET_UPS)) {
                if (objective.counts(settled)) {
                    bound(settled, best.plan().value(settled));
                    hold(settled);
                }
            }
        }

        private long necks() {
            long sum = 0;
            for (SearchProblem.Line line : problem.lines()) {
                sum += line.quantity();
            }
            return sum;
        }

        /** A level over every layout that the levels before it leave. */
        private void overLayouts(Measure level) {
            best.turnTo(level);
            // One piece and one set-up are needed as soon as anything is made; of wood planed away nothing is known.
            long low = best.plan().value(Measure.FILLED) > 0 && level != Measure.PLANED ? 1 : 0;
            if (!clock.over() && !layouts.isEmpty()) {
                Choice hint = Choice.of(model, best.plan());
                Set<SiteLayout> all = new LinkedHashSet<>(layouts);
                all.addAll(hint.layouts().keySet());
                Objective objective = Objective.anchored(
                        level, best.plan().value(level), best.plan().value(Measure.BOOK_VALUE));
                Master master = new Master(model, List.copyOf(all), objective, held);
                Solution s = solver.optimise(master.program, master.hint(hint), clock.limits());
                if (s.hasValues()) {
                    best.offer(PlanWriter.write(model, master.choice(s.values())));
                }
                // A bound over some of the layouts says nothing about the others.
                if (allListed) {
                    long rest = objective.fixed(level, best.plan());
                    low = Math.max(low, objective.bound(level, s.bound(), best.plan(), rest));
                }
            }
            bound(level, Math.min(low, best.plan().value(level)));
            hold(level);
            allListed &= low >= best.plan().value(level);
        }

        private void bound(Measure level, long bound) {
            bounds.put(level, bound);
            best.bound(level, bound);
        }

        private void hold(Measure level) {
            held.put(level, best.plan().value(level));
        }

        private SearchResult result() {
            List<Level> levels = new ArrayList<>();
            boolean proved = true;
            for (Measure m : Measure.values()) {
                Level level = new Level(m, best.plan().value(m), bounds.getOrDefault(m, 0L));
                proved &= level.proved();
                levels.add(level);
            }
            return new SearchResult(
                    proved ? Status.PROVED : Status.GAP,
                    levels,
                    best.plan().layouts(),
                    best.plan().pairs(),
                    ENGINE,
                    clock.seconds());
        }
    }
}
