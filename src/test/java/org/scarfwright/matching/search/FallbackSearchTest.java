package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Status;

class FallbackSearchTest {
    @Test
    void claimsNoMoreThanTryingEverythingFinds() {
        int best = 0;
        int proved = 0;
        int cases = 300;
        for (long seed = 0; seed < cases; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            long[] expected = ExhaustiveSearch.levels(problem);
            SearchResult result = new FallbackSearch().solve(problem, Duration.ofSeconds(30), () -> false);
            for (int i = 0; i < expected.length; i++) {
                Level level = result.levels().get(i);
                assertThat(i == 0 ? level.bound() >= expected[i] : level.bound() <= expected[i])
                        .as("seed %d: %s, best %d", seed, level, expected[i])
                        .isTrue();
                if (level.value() != expected[i]) {
                    break; // a later level's bound is for plans as good as this one before it, not for the best
                }
            }
            long[] values = result.levels().stream().mapToLong(Level::value).toArray();
            best += Arrays.equals(values, expected) ? 1 : 0;
            if (result.status() == Status.PROVED) {
                proved++;
                assertThat(values).as("seed %d", seed).containsExactly(expected);
            }
        }
        assertThat(best)
                .as("cases in which the best plan is found, proved or not")
                .isGreaterThan(cases * 9 / 10);
        assertThat(proved).as("cases in which the bound happens to be met").isPositive();
    }

    @Test
    void fillsAShopsWeekWithABoundThatHolds() {
        for (long seed = 0; seed < 3; seed++) {
            SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(60, 10, false), 15 + seed);
            SearchResult exact = new OrToolsSearch().solve(problem, Duration.ofMinutes(3), () -> false);
            SearchResult result = new FallbackSearch().solve(problem, Duration.ofSeconds(20), () -> false);
            CutPlan.of(problem, result.layouts(), result.pairs());
            assertThat(result.levels().get(0).value())
                    .isEqualTo(exact.levels().get(0).value());
            assertThat(result.levels().get(1).bound())
                    .isLessThanOrEqualTo(exact.levels().get(1).value());
        }
    }

    @Test
    void stopsWhenCancelledWithWhatItHas() {
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(60, 10, true), 1);
        int[] asked = {0};
        SearchResult result = new FallbackSearch().solve(problem, Duration.ofMinutes(1), () -> ++asked[0] > 5);
        assertThat(result.status()).isEqualTo(Status.GAP);
        CutPlan.of(problem, result.layouts(), result.pairs());
    }
}
