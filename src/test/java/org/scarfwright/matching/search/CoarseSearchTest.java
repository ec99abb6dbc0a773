package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchResult.Measure;

class CoarseSearchTest {
    private static final int CASES = 150;

    @Test
    void claimsNoMoreThanTryingEverythingFinds() {
        claimsNoMoreThanTryingEverything(1_000);
    }

    /** Prices of a rack on which one piece stands for many prove no more of the whole one than is true. */
    @Test
    void claimsNoMoreWhereFewPiecesStandForAllAtFirst() {
        claimsNoMoreThanTryingEverything(1);
    }

    private static void claimsNoMoreThanTryingEverything(int few) {
        int bounded = 0;
        int improved = 0;
        int met = 0;
        for (long seed = 0; seed < CASES; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            long[] expected = ExhaustiveSearch.levels(problem);
            SearchClock clock = new SearchClock(Duration.ofSeconds(30), () -> false);
            Incumbent best = new Incumbent(clock);
            Improver improver = new Improver(problem);
            improver.fill(clock);
            best.offer(improver.plan());
            if (best.plan().value(Measure.FILLED) != expected[0]) {
                continue; // its bound is for plans that fill as much as the plan it begins with
            }
            long before = best.plan().value(Measure.BOOK_VALUE);
            RackModel model = new RackModel(problem);
            Optional<Long> bound =
                    new CoarseSearch(model, new Sellers(model), few, NativeSolver.get(), clock, best).run();
            assertThat(bound).as("seed %d", seed).isPresent();
            long proved = bound.orElseThrow();
            assertThat(proved).as("seed %d", seed).isLessThanOrEqualTo(expected[1]);
            assertThat(best.plan().value(Measure.FILLED)).as("seed %d", seed).isEqualTo(expected[0]);
            assertThat(best.plan().value(Measure.BOOK_VALUE))
                    .as("seed %d", seed)
                    .isBetween(expected[1], before);
            bounded++;
            improved += best.plan().value(Measure.BOOK_VALUE) < before ? 1 : 0;
            met += best.plan().value(Measure.BOOK_VALUE) == expected[1] ? 1 : 0;
        }
        assertThat(bounded).isGreaterThan(CASES / 2);
        assertThat(improved).as("cases in which the first plan is improved").isPositive();
        // Where few stand for all only the layouts met are cut anew, which are too few on a rack this small.
        assertThat(met).as("cases in which the best is met").isGreaterThan(few == 1 ? bounded / 2 : bounded * 9 / 10);
    }

    /** Segments priced together cost no more than each by itself, and no less where no line's limit is felt. */
    @Test
    void pricesSegmentsOfASortAsEachByItself() {
        int equal = 0;
        for (long seed = 0; seed < CASES; seed++) {
            RackModel model = new RackModel(SmallCases.problem(seed));
            Random random = new Random(seed);
            long[] worth = new long[model.supplies];
            for (int s = 0; s < worth.length; s++) {
                worth[s] = Prices.ONE * random.nextInt(400) / 3;
            }
            Prices prices = new Prices(Measure.BOOK_VALUE, worth, Prices.ONE);
            long alone = new PriceBound(model, false).price(prices, 1, new ArrayList<>());
            long together = new PriceBound(model, true).price(prices, 1, new ArrayList<>());
            assertThat(together).as("seed %d", seed).isLessThanOrEqualTo(alone);
            equal += together == alone ? 1 : 0;
        }
        assertThat(equal).isGreaterThan(CASES / 2);
    }

    @Test
    void givesALargeRackABoundAndTheSamePlanEachTime() {
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(120, 8, true), 4);
        SearchClock clock = new SearchClock(Duration.ofMinutes(5), () -> false);
        RackModel model = new RackModel(problem);
        CutPlan[] plans = new CutPlan[2];
        for (int i = 0; i < plans.length; i++) {
            Incumbent best = new Incumbent(clock);
            Improver improver = new Improver(problem);
            improver.fill(clock);
            best.offer(improver.plan());
            long bound = new CoarseSearch(model, new Sellers(model), NativeSolver.get(), clock, best)
                    .run()
                    .orElseThrow();
            long value = best.plan().value(Measure.BOOK_VALUE);
            assertThat((value - bound) * 100.0 / value).isBetween(0.0, 10.0);
            plans[i] = best.plan();
        }
        assertThat(plans[1]).isEqualTo(plans[0]);
    }
}
