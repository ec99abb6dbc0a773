package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scarfwright.matching.Shelf.design;
import static org.scarfwright.matching.Shelf.line;
import static org.scarfwright.matching.Shelf.piece;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.OrToolsSearch;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.web.ConflictException;

/** Plans near to one: within the cost, filling as much, as far apart as there are any. */
class NearEqualsTest {
    private static final NeckDesign OVERLAID =
            design().only(Arrangement.OVERLAID).build();
    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
    private static final Duration LIMIT = Duration.ofSeconds(20);
    private static final MatchSearch SEARCH = new OrToolsSearch();
    private static final PlanMaker MAKER = new PlanMaker(SEARCH);

    private static Plan plan(MatchInput input) {
        return MAKER.make(input, NOON, LIMIT, () -> false).saved(1, Plan.State.PROPOSED);
    }

    private static NearEquals.Answer near(MatchInput input, Plan origin, BigDecimal dearest) {
        NearEquals.Watching watching = new NearEquals.Watching(() -> false, n -> {}, LIMIT);
        return new NearEquals(MAKER, input, origin, dearest, watching).search(NOON);
    }

    private static int differing(Plan a, Plan b) {
        return PlanComparison.of(a, b).differing();
    }

    private static BigDecimal spent(Plan plan) {
        return plan.bookValue().orElseThrow();
    }

    private static MatchInput shelf(Random random, int necks, int heads) {
        List<Piece> rack = new ArrayList<>();
        for (int i = 0; i < necks; i++) {
            rack.add(piece("N" + i, String.valueOf(590 + random.nextInt(60)), "90", "25")
                    .build());
        }
        for (int i = 0; i < heads; i++) {
            rack.add(piece("H" + i, String.valueOf(280 + random.nextInt(60)), "90", "22")
                    .build());
        }
        return Shelf.input(Shelf.shop(), rack, line("O-1", OVERLAID, 1), line("O-2", OVERLAID, 1));
    }

    /**
     * Every plan there is, one for each way to give the two orders their blanks and heads: each is matched with both orders pinned,
     * so nothing is left to choose. No piece is long enough for a neck and another part.
     */
    private static List<Plan> everyPlan(MatchInput input) {
        List<Plan> all = new ArrayList<>();
        List<String> codes = input.pieces().stream().map(Piece::code).toList();
        for (String a : codes) {
            for (String b : codes) {
                for (String c : codes) {
                    for (String d : codes) {
                        boolean necks = a.startsWith("N") && b.startsWith("N") && !a.equals(b);
                        if (necks
                                && !List.of(a, b).contains(c)
                                && !List.of(a, b).contains(d)) {
                            all.addAll(pinned(input, new Hand.Pin("O-1", a, c), new Hand.Pin("O-2", b, d)));
                        }
                    }
                }
            }
        }
        return all;
    }

    private static List<Plan> pinned(MatchInput free, Hand.Pin one, Hand.Pin other) {
        MatchInput input = with(
                free,
                List.of(one, other),
                new MatchInput.Line("O-1", OVERLAID, List.of(1), 5, one),
                new MatchInput.Line("O-2", OVERLAID, List.of(1), 5, other));
        try {
            return List.of(plan(input));
        } catch (ConflictException e) {
            // Some piece is too short, or both heads do not fit the one piece.
            assertThat(e.getMessage()).contains("Undo");
            return List.of();
        }
    }

    private static MatchInput with(MatchInput free, List<Hand> hands, MatchInput.Line... lines) {
        return new MatchInput(
                free.week(),
                free.asked(),
                List.of(lines),
                free.designs(),
                free.pieces(),
                free.settings(),
                free.saws(),
                free.day(),
                hands,
                List.of(),
                free.woods());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void theFirstDiffersAsMuchAsAnyPlanWithinTheCost(int seed) {
        Random random = new Random(seed);
        MatchInput input = shelf(random, 3, 3);
        Plan origin = plan(input);
        assertThat(origin.filled()).isEqualTo(2);
        BigDecimal dearest = spent(origin).add(BigDecimal.valueOf(random.nextInt(60), 2));
        List<Plan> every = everyPlan(input);
        assertThat(every).extracting(NearEqualsTest::spent).contains(spent(origin));
        int most = every.stream()
                .filter(p -> p.filled() == 2 && spent(p).compareTo(dearest) <= 0)
                .mapToInt(p -> untraded(origin, p))
                .max()
                .orElse(0);
        List<Plan> found = near(input, origin, dearest).plans();
        assertThat(found.isEmpty() ? 0 : differing(origin, found.get(0))).isEqualTo(most);
        for (int i = 0; i < found.size(); i++) {
            Plan one = found.get(i);
            assertThat(one.filled()).isEqualTo(2);
            assertThat(spent(one)).isLessThanOrEqualTo(dearest);
            assertThat(differing(origin, one)).isPositive();
            for (int j = 0; j < i; j++) {
                assertThat(differing(one, found.get(j))).isPositive();
            }
        }
        assertThat(found).hasSizeLessThanOrEqualTo(NearEquals.MOST);
    }

    /** Two alike orders that trade their pieces are no difference. */
    private static int untraded(Plan a, Plan b) {
        List<String> left = new ArrayList<>();
        a.pairings().forEach(p -> left.add(p.neck().piece() + p.head().piece()));
        b.pairings().forEach(p -> left.remove(p.neck().piece() + p.head().piece()));
        return left.size();
    }

    @Test
    void theOtherArrangementIsAnotherPlanWhereThereIsNoOtherWood() {
        NeckDesign both = design().build();
        MatchInput input = Shelf.input(
                Shelf.shop(),
                List.of(
                        piece("N1", "620", "90", "25").build(),
                        piece("H1", "420", "90", "22").build()),
                line("O-1", both, 1));
        Plan origin = plan(input);
        List<Plan> found = near(input, origin, BigDecimal.valueOf(1000)).plans();
        assertThat(found).singleElement().satisfies(p -> {
            assertThat(p.pairings().get(0).arrangement())
                    .isNotEqualTo(origin.pairings().get(0).arrangement());
            assertThat(p.pairings().get(0).neck().piece()).isEqualTo("N1");
            assertThat(p.hands()).isEmpty();
            assertThat(p.pairings().get(0).reasons())
                    .noneMatch(r -> r.toLowerCase(Locale.ROOT).contains("by hand,"));
        });
    }

    @Test
    void whatIsDecidedByHandStands() {
        MatchInput free = shelf(new Random(3), 4, 4);
        Hand.Pin pin = new Hand.Pin("O-1", "N1", "H1");
        Hand.Forbid forbid = new Hand.Forbid("N2", null);
        MatchInput input = with(
                free,
                List.of(pin, forbid),
                new MatchInput.Line("O-1", OVERLAID, List.of(1), 5, pin),
                new MatchInput.Line("O-2", OVERLAID, List.of(1), 5));
        Plan origin = plan(input);
        List<Plan> found = near(input, origin, BigDecimal.valueOf(1000)).plans();
        assertThat(found).isNotEmpty().allSatisfy(p -> {
            assertThat(p.pairings()).anySatisfy(x -> {
                assertThat(x.order()).isEqualTo("O-1");
                assertThat(x.neck().piece()).isEqualTo("N1");
                assertThat(x.head().piece()).isEqualTo("H1");
            });
            assertThat(p.layouts()).extracting(Plan.PieceLayout::piece).doesNotContain("N2");
            assertThat(p.hands()).containsExactly(pin.words(), forbid.words());
        });
    }

    @Test
    void boundsHoldOnlyWhereTheLevelsBeforeAreAsGood() {
        MatchInput input = shelf(new Random(5), 4, 4);
        Plan origin = plan(input);
        assertThat(origin.status()).isEqualTo(Plan.Status.PROVED);
        List<Plan> found = near(input, origin, BigDecimal.valueOf(1000)).plans();
        assertThat(found).isNotEmpty().allSatisfy(p -> {
            List<Plan.Level> levels = p.levels();
            assertThat(levels.get(0).bound())
                    .isEqualByComparingTo(origin.levels().get(0).bound());
            assertThat(levels.get(1).bound())
                    .isEqualByComparingTo(origin.levels().get(1).bound());
            boolean dearer = spent(p).compareTo(spent(origin)) > 0;
            if (dearer) {
                assertThat(p.status()).isEqualTo(Plan.Status.GAP);
                assertThat(levels.get(2).bound()).isEqualByComparingTo("1");
                assertThat(levels.get(4).bound()).isEqualByComparingTo("0");
            }
        });
    }

    @Test
    void theSameQuestionHasTheSameAnswer() {
        MatchInput input = shelf(new Random(8), 4, 4);
        Plan origin = plan(input);
        BigDecimal dearest = spent(origin).add(BigDecimal.ONE);
        List<List<Plan.Pairing>> once = pairings(near(input, origin, dearest));
        assertThat(once).isNotEmpty();
        assertThat(pairings(near(input, origin, dearest))).isEqualTo(once);
    }

    private static List<List<Plan.Pairing>> pairings(NearEquals.Answer answer) {
        return answer.plans().stream().map(Plan::pairings).toList();
    }

    @Test
    void tellsHowManyItKnows() {
        MatchInput input = shelf(new Random(8), 4, 4);
        Plan origin = plan(input);
        List<Integer> told = new ArrayList<>();
        new NearEquals(
                        MAKER,
                        input,
                        origin,
                        BigDecimal.valueOf(1000),
                        new NearEquals.Watching(() -> false, told::add, LIMIT))
                .search(NOON);
        assertThat(told).isNotEmpty().isSorted().startsWith(1);
    }

    @ParameterizedTest
    @CsvSource({
        "2.50, 41.20, 2.50, 2.50 EUR",
        "'2,5', 41.20, 2.50, 2.50 EUR",
        "5 %, 41.20, 2.06, 5 %",
        "5%, 41.29, 2.06, 5 %",
        "0, 41.20, 0.00, 0.00 EUR",
        "100 %, -3.00, 0.00, 100 %",
        "0.5 %, 41.20, 0.20, 0.5 %"
    })
    void theExtraCostIsMoneyOrPerCent(String text, BigDecimal spent, BigDecimal extra, String words) {
        ExtraCost read = ExtraCost.parse(text);
        assertThat(read.of(spent)).isEqualByComparingTo(extra);
        assertThat(read.words("EUR")).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lots | “lots” is not a number; write for example 18 or 18.50",
                "-1 | “-1” is negative; write for example 18 or 18.50",
                "101 % | “101 %” is more than 100 %; write for example 5 %",
                "% | is empty; write for example 18 or 18.50",
                "1e9 | “1e9” is not a number; write for example 18 or 18.50",
                "9999999999 | “9999999999” is too large; write for example 18.50"
            })
    void whatIsNoCostIsRefused(String text, String sentence) {
        assertThatThrownBy(() -> ExtraCost.parse(text))
                .isInstanceOf(MeasureFormatException.class)
                .hasMessage(sentence);
    }
}
