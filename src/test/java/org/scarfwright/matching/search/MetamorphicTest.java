package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchResult.Status;

/** What must not change when a problem is told otherwise; the order of pieces and one more piece are tested beside the search. */
class MetamorphicTest {
    private static final int CASES = 60;
    private static final Duration LIMIT = Duration.ofSeconds(20);

    private static SearchResult solve(SearchProblem problem) {
        return new OrToolsSearch().solve(problem, LIMIT, () -> false);
    }

    @Test
    void aPieceThatIsNotCutMayBeTakenAway() {
        int taken = 0;
        for (long seed = 0; seed < CASES; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            SearchResult whole = solve(problem);
            assertThat(whole.status()).isEqualTo(Status.PROVED);
            Set<Integer> cut = new HashSet<>();
            whole.layouts().forEach(l -> cut.add(l.piece()));
            for (int p = 0; p < problem.pieces().size(); p++) {
                if (!cut.contains(p)) {
                    taken++;
                    assertThat(solve(Variations.without(problem, p)).levels())
                            .as("case %d without piece %d", seed, p)
                            .isEqualTo(whole.levels());
                }
            }
        }
        assertThat(taken).isGreaterThan(CASES / 4);
    }

    /** Everything twice or seven times as long and worth as much: the same parts lie on the same pieces. */
    @Test
    void lengthsAndKerfsInAnotherScaleLeaveThePlan() {
        for (long seed = 0; seed < CASES; seed++) {
            for (int times : new int[] {2, 7}) {
                // A rate is money for a length, rounded down to whole hundredths: so one side gets longer, the other
                // dearer.
                SearchResult dearer = solve(Variations.dearer(SmallCases.problem(seed), times));
                SearchResult longer = solve(Variations.longer(SmallCases.problem(seed), times));
                assertThat(longer.levels()).as("case %d, times %d", seed, times).isEqualTo(dearer.levels());
                assertThat(longer.pairs()).isEqualTo(dearer.pairs());
                assertThat(longer.layouts()).isEqualTo(dearer.layouts());
            }
        }
    }
}
