package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.matching.Shelf.design;
import static org.scarfwright.matching.Shelf.line;
import static org.scarfwright.matching.Shelf.mm;
import static org.scarfwright.matching.Shelf.piece;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.FallbackSearch;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;

/** Why this piece, why not that one, and what came closest: every sentence as it is printed. */
class WhyTest {
    /** N 457, t 20, 10°, underlaid: the neck's back is 570.43 mm long. Source: check values of the joint, plane geometry. */
    private static final NeckDesign UNDER = design().only(Arrangement.UNDERLAID).build();

    private static Plan plan(MatchInput input) {
        return new PlanMaker(new FallbackSearch()).make(input, Instant.EPOCH, Duration.ofSeconds(20), () -> false);
    }

    private static MatchInput bare(List<Piece> pieces, List<Hand> hands, List<MatchInput.Reserved> held, NeckDesign d) {
        ShopRules shop = Shelf.bareShop();
        return new MatchInput(
                Shelf.WEEK,
                Plan.Asked.WEEK,
                List.of(line("O-1", d, 1)),
                List.of(d),
                pieces,
                shop.settings(),
                shop.saws(),
                Shelf.DAY,
                hands,
                held,
                Shelf.WOODS);
    }

    private static BookValue value(NeckDesign d) {
        ShopRules shop = Shelf.bareShop();
        return new BookValue(StockStandards.of(List.of(d), shop), shop.settings(), Shelf.DAY);
    }

    private static LoneCost cost(Piece piece) {
        PartNeed neck = Way.of(UNDER).get(0).neck();
        return LoneCost.of(neck, piece, Shelf.bareShop(), value(UNDER)).orElseThrow();
    }

    @Test
    void aPartByItselfSpendsThePieceLessItsRest() {
        // 700 mm for 7.00: one hundredth a millimetre. 570.43 mm are used; 129.57 mm go back and are booked as short
        // wood,
        // at 60 %: 77.7, rounded down. So 6.23 are spent.
        LoneCost cost = cost(piece("A", "700", "90", "25").cost(700).build());
        assertThat(cost.cents()).isEqualTo(623);
        assertThat(cost.gone().mm()).isCloseTo(570.43, org.assertj.core.data.Offset.offset(0.01));
        // 690 mm leave 119.57 mm, which is under the 120 mm that go back: all of it is spent.
        LoneCost shorter = cost(piece("B", "690", "90", "25").cost(690).build());
        assertThat(shorter.cents()).isEqualTo(690);
        assertThat(shorter.gone()).isEqualTo(Length.ofMm(690));
        assertThat(LoneCost.of(
                        Way.of(UNDER).get(0).neck(),
                        piece("C", "570", "90", "25").build(),
                        Shelf.bareShop(),
                        value(UNDER)))
                .as("too short")
                .isEmpty();
    }

    @Test
    void tellsWhatAnotherPieceWouldSpendInMoneyAndMillimetres() {
        Piece any = piece("A", "700", "90", "25").build();
        LoneCost cheap = new LoneCost(any, 410, mm("570.4"));
        assertThat(new LoneCost(any, 520, mm("650.4")).moreThan(cheap, "EUR")).isEqualTo("1.10 EUR and 80.0 mm more");
        assertThat(cheap.moreThan(new LoneCost(any, 520, mm("650.4")), "EUR")).isEqualTo("1.10 EUR and 80.0 mm less");
        assertThat(new LoneCost(any, 520, mm("560.4")).moreThan(cheap, "EUR"))
                .isEqualTo("1.10 EUR more and 10.0 mm less");
        assertThat(new LoneCost(any, 400, mm("580.4")).moreThan(cheap, "EUR"))
                .isEqualTo("0.10 EUR less and 10.0 mm more");
        assertThat(cheap.moreThan(cheap, "EUR")).isEqualTo("just as much");
    }

    @Test
    void aPairingTellsWhatItCostAgainstTheNextBest() {
        List<Piece> rack = List.of(
                piece("N1", "600", "90", "25").cost(600).build(),
                piece("N2", "630", "90", "25").cost(630).build(),
                piece("H1", "150", "90", "20").cost(10).build());
        Plan plan = plan(bare(rack, List.of(), List.of(), UNDER));
        assertThat(plan.pairings().get(0).reasons())
                .contains("By itself the neck spends 6.00 EUR of N1; the next best left on the rack, N2, would spend"
                        + " 6.30 EUR: 0.30 EUR and 30.0 mm more.");
    }

    private static WhyNot ask(MatchInput input, Piece piece) {
        Plan plan = plan(input);
        return new WhyNotQuestion(plan, input, input.lines().get(0), piece).answer();
    }

    private static String neck(WhyNot why) {
        return why.answers().stream()
                .filter(a -> a.part().equals("neck"))
                .findFirst()
                .orElseThrow()
                .text();
    }

    @Test
    void answersWithTheFirstRuleThatRefusesAndByHowMuch() {
        Piece chosen = piece("N1", "600", "90", "25").cost(600).build();
        Piece head = piece("H1", "150", "90", "20").cost(10).build();
        Piece tooShort = piece("S", "560.43", "90", "25").build();
        MatchInput input = bare(List.of(chosen, head, tooShort), List.of(), List.of(), UNDER);
        WhyNot why = ask(input, tooShort);
        assertThat(neck(why)).isEqualTo("S as the neck underlaid at 10°: 10.0 mm too short underlaid.");
        WhyNot.Answer answer = why.answers().get(0);
        assertThat(answer.rule()).isEqualTo("length");
        assertThat(answer.shortBy()).isNotNull();
        // A head fits on it as well as on the one that was taken.
        assertThat(why.answers().get(1).rule()).isNull();
        assertThat(why.answers().get(1).text())
                .startsWith("S fits as the head underlaid at 10°. By itself it would spend ");
    }

    @Test
    void answersWhereNothingRefuses() {
        Piece chosen = piece("N1", "600", "90", "25").cost(600).build();
        Piece other = piece("N2", "630", "90", "25").cost(630).build();
        Piece head = piece("H1", "150", "90", "20").cost(10).build();
        MatchInput input = bare(List.of(chosen, other, head), List.of(), List.of(), UNDER);
        assertThat(neck(ask(input, other)))
                .isEqualTo("N2 fits as the neck underlaid at 10°. By itself it would spend 6.30 EUR, and N1 spends 6.00"
                        + " EUR: 0.30 EUR and 30.0 mm more.");
        assertThat(neck(ask(input, chosen)))
                .isEqualTo("N1 fits as the neck underlaid at 10°, and this plan cuts it for this order.");
        MatchInput noHead = bare(List.of(chosen), List.of(), List.of(), UNDER);
        assertThat(neck(ask(noHead, chosen)))
                .isEqualTo("N1 fits as the neck underlaid at 10°, but no head is left to go with it.");
    }

    @Test
    void answersWithWhatWasDecidedByHandAndWhoHoldsAPiece() {
        Piece chosen = piece("N1", "600", "90", "25").build();
        Piece other = piece("N2", "630", "90", "25").build();
        Piece head = piece("H1", "150", "90", "20").cost(10).build();
        MatchInput decided = bare(List.of(chosen, other, head), List.of(new Hand.Forbid("N2", null)), List.of(), UNDER);
        assertThat(neck(ask(decided, other))).isEqualTo("N2 as the neck underlaid at 10°: it is left alone by hand.");
        Piece held = piece("R1", "600", "90", "25").state(PieceState.RESERVED).build();
        MatchInput reserved = bare(
                List.of(chosen, head),
                List.of(),
                List.of(new MatchInput.Reserved(held, "reserved for A-9 (plan 3)")),
                UNDER);
        assertThat(neck(ask(reserved, held))).isEqualTo("R1 as the neck underlaid at 10°: reserved for A-9 (plan 3).");
    }

    @Test
    void answersWithWhatTheTwoPiecesLackTogether() {
        NeckDesign same =
                design().only(Arrangement.UNDERLAID).match(MatchRule.SAME_WOOD).build();
        Piece chosen = piece("N1", "600", "90", "25").build();
        Piece head = piece("H1", "150", "90", "20").cost(10).build();
        Piece walnut = piece("W1", "600", "90", "25").wood("walnut_black").build();
        MatchInput input = bare(List.of(chosen, head, walnut), List.of(), List.of(), same);
        assertThat(neck(ask(input, walnut)))
                .isEqualTo("W1 fits as the neck underlaid at 10°, but not beside H1: the head must be of the neck's"
                        + " wood: W1 is Black walnut and H1 is Hard maple (sugar).");
    }

    @Test
    void aReservedPieceIsAMissThatSaysWhoHasIt() {
        Piece held = piece("R1", "600", "90", "25").state(PieceState.RESERVED).build();
        Piece far = piece("S1", "300", "90", "25").build();
        Plan plan = plan(bare(
                List.of(far), List.of(), List.of(new MatchInput.Reserved(held, "reserved for A-9 (plan 3)")), UNDER));
        assertThat(plan.unfilled().get(0).misses())
                .extracting(Plan.Miss::text)
                .startsWith("R1 as the neck: reserved for A-9 (plan 3).");
        assertThat(plan.unfilled().get(0).misses().get(0).rule()).isEqualTo("free");
    }

    @Test
    void aPieceDecidedAboutIsAMissThatSaysSo() {
        Piece kept = piece("N1", "600", "90", "25").build();
        Plan plan = plan(bare(List.of(kept), List.of(new Hand.Keep("N1", "O-7")), List.of(), UNDER));
        assertThat(plan.unfilled().get(0).misses())
                .extracting(Plan.Miss::text)
                .containsExactly("N1 as the neck: it is kept for O-7 by hand.");
        assertThat(plan.unfilled().get(0).relaxation()).isNull();
    }

    /** The figure that orders a huge rack is the one the sentence tells. */
    @Test
    void everyRuleIsShortByWhatItsSentenceSays() {
        Random random = new Random(4);
        NeckDesign both = design().angles(8, 13).build();
        int refused = 0;
        for (int i = 0; i < 2_000; i++) {
            Piece piece = piece(
                            "P" + i,
                            String.valueOf(100 + random.nextInt(600)),
                            String.valueOf(40 + random.nextInt(60)),
                            String.valueOf(12 + random.nextInt(60)))
                    .bow(String.valueOf(random.nextInt(8)))
                    .knot("50", String.valueOf(60 + random.nextInt(20)), random.nextBoolean())
                    .build();
            for (Way way : Way.of(both)) {
                for (PartNeed need : List.of(way.neck(), way.head())) {
                    Trial trial = Trial.of(need, piece, Shelf.shop());
                    for (PartRule rule : PartRules.ALL) {
                        if (!rule.fits(trial)) {
                            refused++;
                            assertThat(rule.shortBy(trial))
                                    .as(rule.name())
                                    .isEqualTo(rule.why(trial).shortBy());
                        }
                    }
                }
            }
        }
        assertThat(refused).isGreaterThan(2_000);
    }

    @Test
    void anUnfilledOrderTellsTheSmallestBlankThatWouldFillIt() {
        Piece head = piece("H1", "150", "90", "20").build();
        Plan plan = plan(bare(List.of(head), List.of(), List.of(), UNDER));
        // 570.43 mm of neck, 60 mm wide, 20 mm thick; nothing is planed off in this shop.
        assertThat(plan.unfilled().get(0).buy())
                .isEqualTo(
                        "One blank of 571.0 × 60.0 × 20.0 mm or more, flat, would be the neck underlaid at 10°, with H1"
                                + " as the head.");
        Plan nothing = plan(bare(List.of(), List.of(), List.of(), UNDER));
        // One piece of even thickness for both, no kerf: 635.25 mm; the head's width decides.
        assertThat(nothing.unfilled().get(0).buy())
                .isEqualTo(
                        "One blank of 636.0 × 78.0 × 20.0 mm or more, flat, would be the neck and the head underlaid at"
                                + " 10°.");
    }

    @Test
    void whatIsToldToBuyDoesFillTheOrder() {
        NeckDesign same =
                design().match(MatchRule.SAME_WOOD).allowances("3", "2").build();
        ShopRules shop = Shelf.shop();
        for (NeckDesign d : List.of(UNDER, same, design().noWings().build())) {
            for (List<Piece> rack : List.of(
                    List.<Piece>of(),
                    List.of(piece("H1", "320", "90", "22").build()),
                    List.of(piece("N1", "620", "90", "25").build()))) {
                MatchInput input = Shelf.input(shop, rack, line("O-1", d, 1));
                OneMore oneMore = new OneMore(input, Set.of());
                String told = oneMore.cheapest(input.lines().get(0)).orElseThrow();
                Matcher m = Pattern.compile("of ([0-9.]+) × ([0-9.]+) × ([0-9.]+) mm")
                        .matcher(told);
                assertThat(m.find()).isTrue();
                List<Piece> more = new ArrayList<>(rack);
                more.add(piece("NEW", m.group(1), m.group(2), m.group(3)).build());
                assertThat(plan(Shelf.input(shop, more, line("O-1", d, 1))).filled())
                        .as(told)
                        .isEqualTo(1);
            }
        }
    }

    @Test
    void answersWhatOneMoreBlankWouldGive() {
        Piece head = piece("H1", "150", "90", "20").build();
        MatchInput input = bare(List.of(head), List.of(), List.of(), UNDER);
        MatchInput.Line order = input.lines().get(0);
        OneMore oneMore = new OneMore(input, Set.of());
        assertThat(oneMore.answer(order, new OneMore.Blank(mm("600"), mm("70"), mm("22"))))
                .isEqualTo(new BlankAnswer(
                        "O-1", true, "O-1: it would be the neck underlaid at 10°, with H1 as the head."));
        assertThat(oneMore.answer(order, new OneMore.Blank(mm("560.43"), mm("80"), mm("22"))))
                .isEqualTo(new BlankAnswer(
                        "O-1",
                        false,
                        "O-1: it would not help; as the neck 10.0 mm too short underlaid, and nothing left on the rack"
                                + " goes with it."));
        // The only head is cut for another order, and the blank is too narrow to give both.
        OneMore taken = new OneMore(input, Set.of("H1"));
        assertThat(taken.answer(order, new OneMore.Blank(mm("600"), mm("78"), mm("20")))
                        .text())
                .isEqualTo("O-1: it would not help; nothing left on the rack goes with it.");
    }
}
