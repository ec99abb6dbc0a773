package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.ArrayList;
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
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * The book value on racks too large to be proved best: a bound, and a plan near it.
 *
 * <ol>
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

    private static final List<Double> BEGINS = List.of(0.99, 0.6, 0.3);
    private static final int PATIENCE = 60;
    /** Prices take three quarters of the time at most: the rest is for plans. */
    private static final int PRICES_PARTS = 3;

    private static final int PARTS = 4;
    /** The price at which a part can be bought is what this many pieces can give it for, and more. */
    private static final int SELLERS = 40;

    private final RackModel model;
    private final LinearSolver solver;
    private final SearchClock clock;
    private final Incumbent best;
    private final Map<Measure, Long> held = new EnumMap<>(Measure.class);
    private final PriceBound pricing;
    private final Set<SiteLayout> pool = new LinkedHashSet<>();
    /** Layouts the relaxed solution cuts at least so often. */
    private final List<List<SiteLayout>> begins = new ArrayList<>();

    private long scaled = Long.MIN_VALUE;

    CoarseSearch(RackModel model, LinearSolver solver, SearchClock clock, Incumbent best) {
        this.model = model;
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
        return Optional.of(bound());
    }

    private long bound() {
        return Math.min(-Math.floorDiv(-scaled, Prices.ONE), best.plan().value(Measure.BOOK_VALUE));
    }

    private long filled() {
        return held.getOrDefault(Measure.FILLED, 0L);
    }

    private Master master(Set<SiteLayout> layouts) {
        Master master = new Master(model, layouts, Objective.of(Measure.BOOK_VALUE), held, true);
        master.trade(sellingPrices());
        return master;
    }

    private @Nullable Prices generate() {
        SearchClock own = clock.within(Duration.ofMillis(clock.leftMillis() / PARTS * PRICES_PARTS));
        Master master = master(pool);
        Prices bestPrices = null;
        try (Relaxation relaxation = solver.relaxation(master.program)) {
            for (int round = 0; round < MOST_ROUNDS && !own.over(); round++) {
                Solution relaxed = relaxation.solve(own.leftMillis());
                if (relaxed.outcome() != Outcome.OPTIMAL) {
                    break;
                }
                List<SiteLayout> found = new ArrayList<>();
                Prices now = master.prices(relaxed.duals());
                long proved = pricing.price(now, filled(), found);
                if (proved > scaled) {
                    scaled = proved;
                    bestPrices = now;
                    begins.clear();
                    for (double atLeast : BEGINS) {
                        begins.add(master.mostly(relaxed.values(), atLeast));
                    }
                    best.bound(Measure.BOOK_VALUE, bound());
                }
                found.removeIf(x -> !pool.add(x));
                master.add(found);
                double gap = relaxed.bound() * Prices.ONE - scaled;
                if (found.isEmpty() || gap * NEAR < Math.abs(relaxed.bound()) * Prices.ONE) {
                    break;
                }
            }
        }
        return bestPrices;
    }

    /** By supply: what a part costs by itself on the last of so many pieces, times two. */
    private long[] sellingPrices() {
        List<List<Long>> offers = new ArrayList<>();
        for (int s = 0; s < model.supplies; s++) {
            offers.add(new ArrayList<>());
        }
        long dearest = 1;
        for (Site s : model.sites) {
            long base = model.prepared.get(s.prepared()).baseCents() + s.rule().restCents(s.lengthUm());
            for (int i = 0; i < s.menu().size(); i++) {
                long rest = s.rule().restUm(s.menu().shortUm()[i] + s.cutUm(i));
                long cost = base - s.rule().restCents(rest);
                offers.get(s.menu().supply()[i]).add(cost);
                dearest = Math.max(dearest, cost);
            }
        }
        long[] prices = new long[model.supplies];
        for (int s = 0; s < prices.length; s++) {
            List<Long> of = offers.get(s);
            of.sort(null);
            prices[s] = of.size() < SELLERS ? 2 * dearest : Math.max(1, 2 * of.get(SELLERS - 1));
        }
        return prices;
    }

    /** The best of some plans made from prices, each with more or less of the relaxed solution to begin with. */
    private void dive(Prices prices) {
        for (List<SiteLayout> begin : begins) {
            if (!clock.over()) {
                best.offer(new PriceDive(model, pricing).plan(prices, begin, clock));
            }
        }
        // What is proved was reckoned over.
        pricing.price(prices, filled(), new ArrayList<>());
    }

    private void recut(Prices prices) {
        long gap = best.plan().value(Measure.BOOK_VALUE) * Prices.ONE - scaled;
        Recutting.within(pricing, gap, solver, prices, pool).improve(best, clock, PATIENCE);
    }
}
