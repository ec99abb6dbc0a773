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
}
