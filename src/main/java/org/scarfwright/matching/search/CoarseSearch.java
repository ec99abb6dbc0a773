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
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.LinearSolver.Outcome;
import org.scarfwright.matching.search.LinearSolver.Relaxation;
import org.scarfwright.matching.search.LinearSolver.Solution;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * The book value on racks too large to be proved best: a bound, and a plan near it.
 *
 * <ol>
 *   <li><b>First prices.</b> On a rack of many thousand pieces a few of them stand for all, then more, then every piece: each
 *       time prices are held near those found before.
 *   <li><b>Coarse prices.</b> Columns are generated for a relaxation in which every neck of a kind goes with every head its
 *       line allows, wherever they come from. It has a row for each kind instead of each supply, ends in a fraction of the
 *       time, and its prices prove a bound like all others ({@link PriceBound}).
 *   <li><b>Dive.</b> What that relaxation cuts whole, or nearly, is cut where real pieces go together; the rest goes by
 *       prices alone ({@link PriceDive}).
 *   <li><b>Recutting.</b> The plan is improved by small racks solved as one ({@link Recutting}).
 * </ol>
 */
final class CoarseSearch {
    private static final int MOST_ROUNDS = 200;
    /** The bound is near enough to the relaxation when less than one part in so many is missing. */
    private static final long NEAR = 4_000;
    /** The same on a rack so large that the plan stays further from it. */
    private static final long NEAR_MANY = 2_000;
    /** The same for prices that are only a beginning. */
    private static final long ROUGH = 40;

    /** A rack of so many bundles, and no more than {@link #FINER} times as many, gives the first prices. */
    private static final int FEW = 500;

    private static final int FINER = 4;
    /** How far prices may leave those of the coarser rack, in percent of them. */
    private static final int FROM_COARSER_PERCENT = 15;

    /**
     * Prices of the whole rack, before the last ones.
     *
     * @param near see {@link #NEAR}
     * @param percent how far the prices after them may leave them
     */
    private record Stage(long near, int percent) {}

    private static final List<Stage> STAGES = List.of(new Stage(100, 6), new Stage(300, 4));

    private static final List<Double> BEGINS = List.of(0.99, 0.6, 0.3);
    private static final int PATIENCE = 60;
    /** Prices take three quarters of the time at most: the rest is for plans. */
    private static final int PRICES_PARTS = 3;

    private static final int PARTS = 4;

    private final int few;
    private final RackModel model;
    private final Sellers sellers;
    private final LinearSolver solver;
    private final SearchClock clock;
    private final Incumbent best;
    private final Map<Measure, Long> held = new EnumMap<>(Measure.class);
    private final PriceBound pricing;
    private final Set<SiteLayout> pool = new LinkedHashSet<>();
    /** Layouts met on coarser racks. */
    private final Set<SiteLayout> met = new LinkedHashSet<>();
    /** Layouts the relaxed solution cuts at least so often. */
    private final List<List<SiteLayout>> begins = new ArrayList<>();

    private long scaled = Long.MIN_VALUE;

    CoarseSearch(RackModel model, Sellers sellers, LinearSolver solver, SearchClock clock, Incumbent best) {
        this(model, sellers, FEW, solver, clock, best);
    }

    /** @param few bundles on the coarsest rack, and no more than {@link #FINER} times as many */
    CoarseSearch(RackModel model, Sellers sellers, int few, LinearSolver solver, SearchClock clock, Incumbent best) {
        this.few = few;
        this.model = model;
        this.sellers = sellers;
        this.solver = solver;
        this.clock = clock;
        this.best = best;
        held.put(Measure.FILLED, best.plan().value(Measure.FILLED));
        pricing = new PriceBound(model, true);
    }

    /** Runs until nothing more is gained or time is over; the bound, or nothing when there was no time for one. */
    Optional<Long> run() {
        pool.addAll(Choice.of(model, best.plan()).layouts().keySet());
        Prices prices = generate();
        if (prices == null) {
            return Optional.empty();
        }
        dive(prices);
        recut(prices);
        return scaled == Long.MIN_VALUE ? Optional.empty() : Optional.of(bound());
    }

    private long bound() {
        return Math.min(-Math.floorDiv(-scaled, Prices.ONE), best.plan().value(Measure.BOOK_VALUE));
    }

    private long filled() {
        return held.getOrDefault(Measure.FILLED, 0L);
    }

    private @Nullable Prices generate() {
        SearchClock own = clock.within(Duration.ofMillis(clock.leftMillis() / PARTS * PRICES_PARTS));
        Guide guide = new Guide(new long[model.supplies], sellers.prices());
        Prices first = null;
        for (int oneIn = coarsest(); oneIn > 1 && !own.over(); oneIn /= FINER) {
            Prices found = new Rounds(new PriceBound(model, true, oneIn), oneIn, guide, own).run(ROUGH);
            if (found != null) {
                first = found;
                guide = Guide.near(first, FROM_COARSER_PERCENT);
            }
        }
        if (first != null) {
            // Whatever is left of the time, these prove something, and what is cheap at them is worth having.
            prove(first, pool);
        }
        if (many()) {
            for (Stage stage : STAGES) {
                Prices better = new Rounds(pricing, 1, guide, own).run(stage.near());
                if (better != null) {
                    first = better;
                    guide = Guide.near(first, stage.percent());
                }
            }
        }
        Prices last = new Rounds(pricing, 1, guide, own).run(many() ? NEAR_MANY : NEAR);
        return last == null ? first : last;
    }

    /** So many pieces that a few of them stand for all. */
    private boolean many() {
        return model.bundles.size() > few * FINER;
    }

    private int coarsest() {
        int oneIn = 1;
        while (model.bundles.size() / oneIn > few * FINER) {
            oneIn *= FINER;
        }
        return oneIn;
    }

    private void prove(Prices prices, Set<SiteLayout> into) {
        List<SiteLayout> found = new ArrayList<>();
        scaled = Math.max(scaled, pricing.price(prices, filled(), found));
        into.addAll(found);
        best.bound(Measure.BOOK_VALUE, bound());
    }

    /**
     * What a part is worth at the least and at the most, by supply. Prices that are held between figures near the right ones do
     * not swing, and get there in a fraction of the rounds.
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    private record Guide(long[] low, long[] high) {
        static Guide near(Prices prices, int percent) {
            long[] low = new long[prices.supply().length];
            long[] high = new long[low.length];
            for (int s = 0; s < low.length; s++) {
                long cents = prices.supply()[s] / Prices.ONE;
                low[s] = cents * (100 - percent) / 100;
                high[s] = cents * (100 + percent) / 100 + 1;
            }
            return new Guide(low, high);
        }
    }

    /** Column generation on the rack, or on a coarser one in which one bundle in so many stands for as many. */
    private final class Rounds {
        private final PriceBound rack;
        private final boolean whole;
        private final SearchClock own;
        private final Set<SiteLayout> layouts;
        private final Master master;
        private @Nullable Prices bestPrices;
        private long highest = Long.MIN_VALUE;

        Rounds(PriceBound rack, int oneIn, Guide guide, SearchClock own) {
            this.rack = rack;
            this.own = own;
            whole = oneIn == 1;
            layouts = whole ? pool : new LinkedHashSet<>(met);
            layouts.addAll(met);
            master = Master.coarse(model, layouts, Objective.of(Measure.BOOK_VALUE), held, oneIn);
            master.trade(guide.high(), guide.low());
        }

        /**
         * Runs until less than one part in so many is missing, or nothing is found any more.
         *
         * @return the prices that prove most; nothing when there was no time
         */
        @Nullable
        Prices run(long near) {
            try (Relaxation relaxation = solver.relaxation(master.program)) {
                for (int round = 0; round < MOST_ROUNDS && !own.over(); round++) {
                    Solution relaxed = relaxation.solve(own.leftMillis());
                    if (relaxed.outcome() != Outcome.OPTIMAL) {
                        break;
                    }
                    List<SiteLayout> found = new ArrayList<>();
                    Prices now = master.prices(relaxed.duals());
                    take(now, rack.price(now, filled(), layouts, found), relaxed);
                    found.removeIf(x -> !layouts.add(x));
                    master.add(found);
                    double gap = relaxed.bound() * Prices.ONE - highest;
                    if (found.isEmpty() || gap * near < Math.abs(relaxed.bound()) * Prices.ONE) {
                        break;
                    }
                }
            }
            met.addAll(layouts);
            return bestPrices;
        }

        private void take(Prices now, long proved, Solution relaxed) {
            if (proved <= highest) {
                return;
            }
            highest = proved;
            bestPrices = now;
            if (whole) {
                scaled = Math.max(scaled, proved);
                begins.clear();
                for (double atLeast : BEGINS) {
                    begins.add(master.mostly(relaxed.values(), atLeast));
                }
                best.bound(Measure.BOOK_VALUE, bound());
            }
        }
    }

    /** The best of some plans made from prices, each with more or less of the relaxed solution to begin with. */
    private void dive(Prices prices) {
        BitSet among = sellers.bundles();
        pool.forEach(x -> among.set(x.site.bundle()));
        if (begins.isEmpty()) {
            begins.add(List.of());
        }
        for (List<SiteLayout> begin : begins) {
            if (!clock.over()) {
                best.offer(new PriceDive(model, pricing, among).plan(prices, begin, clock));
            }
        }
    }

    private void recut(Prices prices) {
        Recutting recutting;
        if (many()) {
            recutting = new Recutting(model, solver, prices, pool);
        } else {
            // What is proved was reckoned over by the dives.
            scaled = Math.max(scaled, pricing.price(prices, filled(), new ArrayList<>()));
            long gap = best.plan().value(Measure.BOOK_VALUE) * Prices.ONE - scaled;
            recutting = Recutting.within(pricing, gap, solver, prices, pool);
        }
        recutting.improve(best, clock, PATIENCE);
    }
}
