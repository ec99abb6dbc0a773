package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.scarfwright.matching.EveryPlan.Rule;
import org.scarfwright.matching.search.OrToolsSearch;
import org.scarfwright.matching.search.SearchResult;
import org.scarfwright.necks.NeckOrder;

/**
 * From a week's question to its plan, every level is what trying everything finds, and the independent checker has nothing to say.
 * In the weeks of a rule that rule decides: where it is not known, other plans are best.
 *
 * <p>{@code -Dweeks.all} tries {@value #ALL} weeks of each rule and {@value #ALL_MIXED} of many, {@value #TOGETHER} together;
 * without it the first {@value #SOME} of each and {@value #SOME_MIXED} of many.
 */
class EveryRuleTest {
    private static final int ALL = 150;
    private static final int ALL_MIXED = 500;
    private static final int TOGETHER = 5_150;
    private static final int SOME = 25;
    private static final int SOME_MIXED = 100;

    private static final boolean WHOLE = System.getProperty("weeks.all") != null;

    private final OrToolsSearch search = new OrToolsSearch();

    @ParameterizedTest
    @EnumSource(Rule.class)
    void findsWhatTryingEverythingFindsWhereOneRuleDecides(Rule rule, TestReporter reporter) {
        int weeks = WHOLE ? ALL : SOME;
        long decided = LongStream.range(0, weeks)
                .parallel()
                .filter(seed -> {
                    MatchInput week = RuleWeeks.about(rule, seed);
                    long[] best = EveryPlan.levels(week);
                    assertThat(levels(week)).as("%s, week %d", rule, seed).containsExactly(best);
                    return !Arrays.equals(EveryPlan.levels(week, EnumSet.of(rule)), best);
                })
                .count();
        reporter.publishEntry(rule.name(), "decides " + decided + " of " + weeks + " weeks");
        assertThat(decided).as("weeks in which %s decides", rule).isGreaterThan(weeks / 20);
    }

    @Test
    void findsWhatTryingEverythingFindsUnderManyRules() {
        LongStream.range(0, WHOLE ? ALL_MIXED : SOME_MIXED).parallel().forEach(seed -> {
            MatchInput week = RuleWeeks.aboutMany(seed);
            assertThat(levels(week)).as("week %d", seed).containsExactly(EveryPlan.levels(week));
        });
    }

    @Test
    void triesMoreThanFiveThousandWeeksWhenAsked() {
        assertThat(ALL * Rule.values().length + ALL_MIXED).isEqualTo(TOGETHER);
    }

    private long[] levels(MatchInput week) {
        SearchResult result = search.solve(new MatchModel(week).problem(), Duration.ofMinutes(2), () -> false);
        assertThat(result.status()).isEqualTo(SearchResult.Status.PROVED);
        Plan plan = new PlanMaker((problem, limit, watch) -> result)
                .make(week, Instant.EPOCH, Duration.ofMinutes(2), () -> false);
        assertThat(new PlanChecker().faults(plan, facts(week))).isEmpty();
        return result.levels().stream().mapToLong(SearchResult.Level::value).toArray();
    }

    private static PlanCheck.Facts facts(MatchInput week) {
        List<NeckOrder> orders = week.lines().stream()
                .map(l -> new NeckOrder(
                        1,
                        0,
                        l.order(),
                        l.design().code(),
                        l.numbers().size(),
                        LocalDate.of(2026, 12, 4),
                        l.priority(),
                        week.week(),
                        ""))
                .toList();
        return new PlanCheck.Facts(
                week.pieces(), week.designs(), orders, week.settings(), week.saws(), week.day(), week.hands());
    }
}
