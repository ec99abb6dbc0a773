package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Status;

class OrToolsSearchTest {
    private static final int CASES = 500;
    private static final Duration LONG = Duration.ofMinutes(2);

    @Test
    void agreesWithTryingEverythingOnEveryLevel() {
        OrToolsSearch search = new OrToolsSearch();
        int withNecks = 0;
        for (long seed = 0; seed < CASES; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            SearchResult result = search.solve(problem, Duration.ofSeconds(60), () -> false);
            long[] expected = ExhaustiveSearch.levels(problem);

            assertThat(result.status()).as("seed %d", seed).isEqualTo(Status.PROVED);
            assertThat(result.levels()).as("seed %d", seed).allMatch(Level::proved);
            assertThat(result.levels().stream().mapToLong(Level::value).toArray())
                    .as("seed %d", seed)
                    .containsExactly(expected);
            withNecks += expected[0] > 0 ? 1 : 0;
        }
        assertThat(withNecks).as("cases in which something can be made").isGreaterThan(CASES / 2);
    }

    /** With room for few layouts most proofs cannot be made; what is claimed must hold all the same. */
    @Test
    void claimsNothingItCouldNotListTheLayoutsFor() {
        int unproved = 0;
        for (long seed = 0; seed < CASES; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            OrToolsSearch cramped = new OrToolsSearch(NativeSolver.get(), (int) (seed % 4));
            SearchResult result = cramped.solve(problem, Duration.ofSeconds(60), () -> false);
            long[] expected = ExhaustiveSearch.levels(problem);
            for (int i = 0; i < expected.length; i++) {
                Level level = result.levels().get(i);
                long bound = level.bound();
                boolean holds = i == 0 ? bound >= expected[i] : bound <= expected[i];
                assertThat(holds)
                        .as("seed %d: bound %d of %s, best %d", seed, bound, level.measure(), expected[i])
                        .isTrue();
                if (!level.proved()) {
                    unproved++;
                    break; // a later level's bound is for plans as good as this one before it, not for the best
                }
                assertThat(level.value())
                        .as("seed %d, %s", seed, level.measure())
                        .isEqualTo(expected[i]);
            }
        }
        assertThat(unproved).as("cases in which the limit was felt").isPositive();
    }

    @Test
    void provesAShopsWeekOfSixtyPiecesAndTenOrders() {
        OrToolsSearch search = new OrToolsSearch();
        for (long seed = 0; seed < 3; seed++) {
            for (boolean varied : new boolean[] {true, false}) {
                // Seeds that take a second or two; the hardest of a small shop take ten.
                long which = varied ? seed : 14 + seed;
                SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(60, 10, varied), which);
                SearchResult result = search.solve(problem, Duration.ofMinutes(3), () -> false);
                assertThat(result.status())
                        .as("seed %d, varied %s", which, varied)
                        .isEqualTo(Status.PROVED);
            }
        }
    }

    @Test
    void findsTheSameValuesWhateverTheOrderOfPiecesAndLines() {
        OrToolsSearch search = new OrToolsSearch();
        for (long seed = 0; seed < 60; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            SearchProblem turned = Variations.shuffled(problem, seed);
            assertThat(values(search.solve(turned, LONG, () -> false)))
                    .as("seed %d", seed)
                    .isEqualTo(values(search.solve(problem, LONG, () -> false)));
        }
    }

    @Test
    void makesNoLessOfARackWithOneMorePiece() {
        OrToolsSearch search = new OrToolsSearch();
        int better = 0;
        for (long seed = 0; seed < 120; seed++) {
            SearchProblem whole = SmallCases.problem(seed);
            int last = whole.pieces().size() - 1;
            CutPlan without = plan(Variations.without(whole, last), search);
            CutPlan with = plan(whole, search);
            assertThat(CutPlan.BETTER.compare(with, without))
                    .as("seed %d", seed)
                    .isLessThanOrEqualTo(0);
            better += CutPlan.BETTER.compare(with, without) < 0 ? 1 : 0;
        }
        assertThat(better).as("cases in which the piece helps").isPositive();
    }

    @Test
    void givesTheSamePlanForTheSameProblem() {
        OrToolsSearch search = new OrToolsSearch();
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(60, 10, true), 0);
        SearchResult first = search.solve(problem, LONG, () -> false);
        SearchResult second = search.solve(problem, LONG, () -> false);
        assertThat(second.layouts()).isEqualTo(first.layouts());
        assertThat(second.pairs()).isEqualTo(first.pairs());
        assertThat(second.levels()).isEqualTo(first.levels());
    }

    @Test
    void keepsTheBestSoFarWhenCancelled() {
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(300, 30, true), 1);
        long began = System.nanoTime();
        long cancelAfter = 2_000_000_000L;
        SearchResult result = new OrToolsSearch().solve(problem, LONG, () -> System.nanoTime() - began > cancelAfter);
        assertThat(result.status()).isEqualTo(Status.GAP);
        assertThat(result.levels().get(0).value()).isPositive();
        CutPlan.of(problem, result.layouts(), result.pairs());
        assertBoundsHold(result);
    }

    @Test
    void keepsTheBestSoFarWhenTimeIsOver() {
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(300, 30, true), 2);
        SearchResult result = new OrToolsSearch().solve(problem, Duration.ofMillis(1500), () -> false);
        assertThat(result.status()).isEqualTo(Status.GAP);
        assertThat(result.levels().get(0).value()).isPositive();
        CutPlan.of(problem, result.layouts(), result.pairs());
        assertBoundsHold(result);
    }

    @Test
    void returnsAnEmptyPlanWithoutAnyTime() {
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(60, 10, true), 3);
        SearchResult result = new OrToolsSearch().solve(problem, Duration.ZERO, () -> false);
        assertThat(result.status()).isEqualTo(Status.GAP);
        assertThat(result.layouts()).isEmpty();
        assertBoundsHold(result);
    }

    @Test
    void provesThatNothingIsBestWhereNothingFits() {
        SearchProblem nothing = new SearchProblem(List.of(), List.of(), List.of(), 0, 0);
        SearchResult result = new OrToolsSearch().solve(nothing, LONG, () -> false);
        assertThat(result.status()).isEqualTo(Status.PROVED);
        assertThat(result.layouts()).isEmpty();
    }

    private static void assertBoundsHold(SearchResult result) {
        for (Level level : result.levels()) {
            if (level.measure() == SearchResult.Measure.FILLED) {
                assertThat(level.bound()).isGreaterThanOrEqualTo(level.value());
            } else {
                assertThat(level.bound()).isLessThanOrEqualTo(level.value());
            }
        }
    }

    private static CutPlan plan(SearchProblem problem, OrToolsSearch search) {
        SearchResult result = search.solve(problem, LONG, () -> false);
        return CutPlan.of(problem, result.layouts(), result.pairs());
    }

    private static List<Long> values(SearchResult result) {
        return result.levels().stream().map(Level::value).toList();
    }
}
