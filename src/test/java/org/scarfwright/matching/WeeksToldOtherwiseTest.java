package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.EveryPlan.Rule;
import org.scarfwright.matching.search.OrToolsSearch;
import org.scarfwright.matching.search.SearchProblem;
import org.scarfwright.matching.search.SearchResult;
import org.scarfwright.rack.Piece;

/**
 * Weeks in which many rules decide, told otherwise: what must stay the same does, and more wood is never worse. Nothing here
 * needs to know what is best.
 */
class WeeksToldOtherwiseTest {
    /** Weeks about each rule. */
    private static final int EACH = 4;
    /** Weeks about many rules; in most of them little can be made. */
    private static final int MIXED = 40;

    private static final Duration LIMIT = Duration.ofMinutes(2);

    /**
     * @param cut codes of the pieces its plan cuts
     * @param best what is reached on every level
     */
    private record Answer(Set<String> cut, List<Long> best) {}

    private static Stream<MatchInput> weeks() {
        return Stream.concat(
                        Stream.of(Rule.values())
                                .flatMap(rule -> LongStream.range(0, EACH).mapToObj(s -> RuleWeeks.about(rule, s))),
                        LongStream.range(0, MIXED).mapToObj(RuleWeeks::aboutMany))
                .parallel();
    }

    private static Answer answer(MatchInput week) {
        SearchProblem problem = new MatchModel(week).problem();
        SearchResult result = new OrToolsSearch().solve(problem, LIMIT, () -> false);
        assertThat(result.status()).isEqualTo(SearchResult.Status.PROVED);
        return new Answer(
                result.layouts().stream()
                        .map(l -> problem.pieces().get(l.piece()).code())
                        .collect(Collectors.toCollection(TreeSet::new)),
                result.levels().stream().map(SearchResult.Level::value).toList());
    }

    private static MatchInput with(MatchInput week, List<MatchInput.Line> lines, List<Piece> pieces) {
        return new MatchInput(
                week.week(),
                week.asked(),
                lines,
                week.designs(),
                pieces,
                week.settings(),
                week.saws(),
                week.day(),
                week.hands(),
                week.reserved(),
                week.woods());
    }

    private static MatchInput without(MatchInput week, Piece piece) {
        return with(
                week,
                week.lines(),
                week.pieces().stream()
                        .filter(p -> !p.code().equals(piece.code()))
                        .toList());
    }

    /** Whoever decided something about a piece by name means that piece. */
    private static boolean named(MatchInput week, Piece piece) {
        return week.hands().toString().contains(piece.code())
                || week.lines().toString().contains(piece.code());
    }

    @Test
    void aPieceLessIsNeverBetterAndOneThatIsNotCutIsNotMissed() {
        long[] counts = weeks().map(week -> {
                    Answer whole = answer(week);
                    long[] count = new long[2];
                    for (Piece piece : week.pieces()) {
                        if (named(week, piece)) {
                            continue;
                        }
                        List<Long> less = answer(without(week, piece)).best();
                        if (!whole.cut().contains(piece.code())) {
                            count[0]++;
                            assertThat(less)
                                    .as("%s without %s, which is not cut", week, piece.code())
                                    .isEqualTo(whole.best());
                        } else {
                            count[1]++;
                            assertThat(order(less, whole.best()))
                                    .as("%s without %s", week, piece.code())
                                    .isGreaterThanOrEqualTo(0);
                        }
                    }
                    return count;
                })
                .reduce(new long[2], (a, b) -> new long[] {a[0] + b[0], a[1] + b[1]});
        assertThat(counts[0]).as("pieces not cut").isGreaterThan(100);
        assertThat(counts[1]).as("pieces cut").isGreaterThan(100);
    }

    /** Below 0 when the first is better: more necks, then less of everything else. */
    private static int order(List<Long> a, List<Long> b) {
        for (int i = 0; i < a.size(); i++) {
            int c = Long.compare(a.get(i), b.get(i));
            if (c != 0) {
                return i == 0 ? -c : c;
            }
        }
        return 0;
    }

    @Test
    void theOrderOfPiecesAndOrdersChangesNothing() {
        weeks().forEach(week -> {
            Random random = new Random(week.pieces().size());
            List<MatchInput.Line> lines = new ArrayList<>(week.lines());
            List<Piece> pieces = new ArrayList<>(week.pieces());
            Collections.shuffle(lines, random);
            Collections.shuffle(pieces, random);
            assertThat(answer(with(week, lines, pieces)).best())
                    .as("%s", week)
                    .isEqualTo(answer(week).best());
        });
    }
}
