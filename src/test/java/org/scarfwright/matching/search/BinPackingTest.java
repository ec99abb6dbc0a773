package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scarfwright.matching.search.SearchResult.Measure;

/** The cutting of blanks alone, on bin-packing problems whose fewest bins are known. Larger ones are in the benchmarks. */
class BinPackingTest {
    private static final Duration LIMIT = Duration.ofMinutes(2);

    @ParameterizedTest
    @CsvSource({"60, 0", "60, 1", "120, 0", "120, 1"})
    void packsUniformItemsIntoAsFewBinsAsTheLinearProgramAllows(int items, long seed) {
        BinPacking packing = BinPacking.uniform(items, seed);
        assertThat(bins(packing)).isEqualTo(packing.leastBins());
    }

    @ParameterizedTest
    @CsvSource({"60, 0", "60, 1", "120, 0"})
    void packsTripletsWithoutAnythingLeftOver(int items, long seed) {
        assertThat(bins(BinPacking.triplets(items, seed))).isEqualTo(items / 3);
    }

    private static long bins(BinPacking packing) {
        SearchProblem problem = packing.problem();
        SearchResult result =
                new OrToolsSearch().solve(problem, LIMIT, new BinPacking.UntilProved(problem, () -> false));
        assertThat(result.levels().subList(0, 2)).allMatch(SearchResult.Level::proved);
        CutPlan plan = CutPlan.of(problem, result.layouts(), result.pairs());
        assertThat(plan.value(Measure.FILLED)).isEqualTo(problem.orderedWeight());
        return plan.value(Measure.BOOK_VALUE) / BinPacking.CENTS;
    }
}
