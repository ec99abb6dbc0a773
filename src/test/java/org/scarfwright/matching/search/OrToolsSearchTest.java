package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Status;

class OrToolsSearchTest {
    private static final int CASES = 500;

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
}
