package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scarfwright.matching.Shelf.design;
import static org.scarfwright.matching.Shelf.line;
import static org.scarfwright.matching.Shelf.piece;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.FallbackSearch;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.OrToolsSearch;
import org.scarfwright.measure.Angle;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.web.ConflictException;

/** What people decide by hand stands, and the rest is matched around it. */
class HandsMatchTest {
    private static final NeckDesign DESIGN = design().build();

    /** Two necks' worth of wood each way: N1 is shorter and so cheaper than N2, H1 than H2. */
    private static final List<Piece> RACK = List.of(
            piece("N1", "620", "90", "25").build(),
            piece("N2", "700", "90", "25").build(),
            piece("H1", "300", "90", "22").build(),
            piece("H2", "340", "90", "22").build());

    static List<MatchSearch> searches() {
        return List.of(new OrToolsSearch(), new FallbackSearch());
    }

    private static Plan plan(MatchSearch search, List<Hand> hands, MatchInput.Line... lines) {
        return plan(search, RACK, hands, lines);
    }

    private static Plan plan(MatchSearch search, List<Piece> rack, List<Hand> hands, MatchInput.Line... lines) {
        ShopRules shop = Shelf.shop();
        MatchInput input = new MatchInput(
                Shelf.WEEK,
                Plan.Asked.WEEK,
                List.of(lines),
                List.of(DESIGN),
                rack,
                shop.settings(),
                shop.saws(),
                Shelf.DAY,
                hands,
                List.of(),
                Shelf.WOODS);
        return new PlanMaker(search).make(input, Instant.EPOCH, Duration.ofSeconds(20), () -> false);
    }

    private static MatchInput.Line pinned(String order, int number, String neck, String head) {
        return new MatchInput.Line(order, DESIGN, List.of(number), 5, new Hand.Pin(order, neck, head));
    }

    private static List<Hand> pins(MatchInput.Line... lines) {
        List<Hand> hands = new ArrayList<>();
        for (MatchInput.Line l : lines) {
            if (l.pin() != null) {
                hands.add(l.pin());
            }
        }
        return hands;
    }

    @ParameterizedTest
    @MethodSource("searches")
    void aPinHoldsAlthoughItCostsMore(MatchSearch search) {
        Plan free = plan(search, List.of(), line("O-1", DESIGN, 1));
        String neck = free.pairings().get(0).neck().piece().equals("N2") ? "N1" : "N2";
        String head = free.pairings().get(0).head().piece().equals("H2") ? "H1" : "H2";
        MatchInput.Line pin = pinned("O-1", 1, neck, head);
        String words = "Pinned by hand: O-1 takes its neck from " + neck + " and its head from " + head + ".";
        Plan plan = plan(search, pins(pin), pin);
        assertThat(plan.pairings()).singleElement().satisfies(p -> {
            assertThat(p.neck().piece()).isEqualTo(neck);
            assertThat(p.head().piece()).isEqualTo(head);
            assertThat(p.reasons()).contains(words);
        });
        assertThat(plan.hands()).containsExactly(words);
        assertThat(plan.levels().get(0).value()).isEqualByComparingTo("1");
        assertThat(plan.levels().get(0).bound()).isEqualByComparingTo("1");
        assertThat(plan.levels().get(1).value())
                .isGreaterThan(free.levels().get(1).value());
    }

    @ParameterizedTest
    @MethodSource("searches")
    void aPinnedNeckComesBeforeTwoOthers(MatchSearch search) {
        // One blank and one head are left of what two necks need: without the pin another order would take them.
        List<Piece> one = List.of(RACK.get(0), RACK.get(2));
        MatchInput.Line pin = pinned("O-1", 1, "N1", "H1");
        MatchInput.Line urgent = new MatchInput.Line("O-2", DESIGN, List.of(1, 2), 9);
        Plan plan = plan(search, one, pins(pin), pin, urgent);
        assertThat(plan.pairings()).extracting(Plan.Pairing::order).contains("O-1");
        assertThat(plan.unfilled()).extracting(Plan.Unfilled::order).containsExactly("O-2");
        assertThat(plan.levels().get(0).value()).as("5 of 5 + 2 · 9").isEqualByComparingTo("5");
    }

    @ParameterizedTest
    @MethodSource("searches")
    void aForbiddenPieceIsNotCut(MatchSearch search) {
        Plan plan = plan(search, List.of(new Hand.Forbid("N1", null)), line("O-1", DESIGN, 1));
        assertThat(plan.layouts())
                .extracting(Plan.PieceLayout::piece)
                .isNotEmpty()
                .doesNotContain("N1");
        assertThat(plan.hands()).containsExactly("N1 is left alone by hand.");
    }

    @ParameterizedTest
    @MethodSource("searches")
    void aPieceForbiddenForOneOrderIsThereForOthers(MatchSearch search) {
        List<Piece> one = List.of(RACK.get(0), RACK.get(2));
        List<Hand> hands = List.of(new Hand.Forbid("N1", "O-1"));
        Plan plan = plan(search, one, hands, line("O-1", DESIGN, 1), line("O-2", DESIGN, 1));
        assertThat(plan.pairings()).extracting(Plan.Pairing::order).containsExactly("O-2");
    }

    @ParameterizedTest
    @MethodSource("searches")
    void aForbiddenPairIsNotMadeAndItsPiecesStayFree(MatchSearch search) {
        List<Piece> three = List.of(RACK.get(0), RACK.get(2), RACK.get(3));
        Plan free = plan(search, three, List.of(), line("O-1", DESIGN, 1));
        Plan.Pairing cheapest = free.pairings().get(0);
        List<Hand> hands = List.of(
                new Hand.ForbidPair(cheapest.neck().piece(), cheapest.head().piece()));
        Plan plan = plan(search, three, hands, line("O-1", DESIGN, 1));
        assertThat(plan.pairings())
                .singleElement()
                .satisfies(p -> assertThat(List.of(p.neck().piece(), p.head().piece()))
                        .isNotEqualTo(
                                List.of(cheapest.neck().piece(), cheapest.head().piece())));
    }

    @ParameterizedTest
    @MethodSource("searches")
    void onePieceForBothPartsCanBeForbidden(MatchSearch search) {
        NeckDesign same = design().match(MatchRule.SAME_PIECE).build();
        List<Piece> long1 = List.of(piece("L1", "900", "90", "25").build());
        assertThat(plan(search, long1, List.of(), line("O-1", same, 1)).filled())
                .isEqualTo(1);
        assertThat(plan(search, long1, List.of(new Hand.ForbidPair("L1", "L1")), line("O-1", same, 1))
                        .filled())
                .isZero();
    }

    @ParameterizedTest
    @MethodSource("searches")
    void aKeptPieceGoesToItsOrderOrToNone(MatchSearch search) {
        List<Piece> one = List.of(RACK.get(0), RACK.get(2));
        MatchInput.Line urgent = new MatchInput.Line("O-2", DESIGN, List.of(1), 9);
        MatchInput.Line other = new MatchInput.Line("O-1", DESIGN, List.of(1), 1);
        assertThat(plan(search, one, List.of(), urgent, other).pairings())
                .extracting(Plan.Pairing::order)
                .containsExactly("O-2");
        Plan kept = plan(search, one, List.of(new Hand.Keep("N1", "O-1")), urgent, other);
        assertThat(kept.pairings()).singleElement().satisfies(p -> {
            assertThat(p.order()).isEqualTo("O-1");
            assertThat(p.reasons()).contains("N1 is kept for O-1 by hand.");
        });
    }

    @ParameterizedTest
    @MethodSource("searches")
    void anArrangementByHandIsKept(MatchSearch search) {
        for (Arrangement arrangement : Arrangement.values()) {
            List<Hand> hands = List.of(new Hand.Arrange("O-1", arrangement, null));
            NeckDesign arranged = new ByHand(hands).arranged("O-1", DESIGN);
            Plan plan = plan(search, hands, line("O-1", arranged, 1), line("O-2", DESIGN, 1));
            assertThat(plan.filled()).isEqualTo(2);
            assertThat(plan.pairings())
                    .filteredOn(p -> p.order().equals("O-1"))
                    .singleElement()
                    .satisfies(p -> {
                        assertThat(p.arrangement()).isEqualTo(arrangement);
                        assertThat(p.reasons()).contains("By hand, O-1 is made " + arrangement.word() + ".");
                    });
        }
    }

    @Test
    void anAngleByHandIsKept() {
        NeckDesign two = design().angles(10, 13).build();
        List<Hand> hands = List.of(new Hand.Arrange("O-1", null, Angle.ofDegrees(13)));
        NeckDesign arranged = new ByHand(hands).arranged("O-1", two);
        assertThat(arranged.angles()).containsExactly(Angle.ofDegrees(13));
        assertThat(new ByHand(hands).arranged("O-2", two)).isSameAs(two);
    }

    @Test
    void aPinNoRuleAllowsIsToldWithItsSentence() {
        MatchInput.Line pin = pinned("O-1", 1, "H1", "H2");
        assertThatThrownBy(() -> plan(new FallbackSearch(), pins(pin), pin))
                .isInstanceOf(ConflictException.class)
                .hasMessageStartingWith("Pinned by hand: O-1 takes its neck from H1 and its head from H2. That cannot"
                        + " hold: H1 as the neck: ")
                .hasMessageContaining("mm too short underlaid")
                .hasMessageEndingWith("Undo it to match the week.");
    }

    @Test
    void aPinOnWoodThatWentIsToldSo() {
        MatchInput.Line pin = pinned("O-1", 1, "GONE", "H2");
        assertThatThrownBy(() -> plan(new FallbackSearch(), pins(pin), pin))
                .hasMessageContaining("GONE is not free on the rack");
    }

    @ParameterizedTest
    @MethodSource("searches")
    void twoPinsThatNeedTheSameWoodAreToldTogether(MatchSearch search) {
        MatchInput.Line one = pinned("O-1", 1, "N1", "H1");
        MatchInput.Line two = pinned("O-2", 1, "N1", "H2");
        assertThatThrownBy(() -> plan(search, pins(one, two), one, two))
                .isInstanceOf(ConflictException.class)
                .hasMessageEndingWith(
                        "does not find room beside what else is pinned or kept by hand. Undo one of them.");
    }

    @Test
    void contradictionsAreTold() {
        Hand pin = new Hand.Pin("O-1", "N1", "H1");
        assertThat(ByHand.contradiction(List.of(pin), new Hand.Forbid("N1", null)))
                .isEqualTo("cannot be pinned and left alone at once (Pinned by hand: O-1 takes its neck from N1 and its"
                        + " head from H1); undo that first");
        assertThat(ByHand.contradiction(List.of(pin), new Hand.Forbid("N1", "O-2")))
                .isNull();
        assertThat(ByHand.contradiction(List.of(pin), new Hand.ForbidPair("N1", "H1")))
                .startsWith("cannot be pinned and kept apart at once");
        assertThat(ByHand.contradiction(List.of(new Hand.Keep("H1", "O-2")), pin))
                .startsWith("cannot be pinned for one order and kept for another");
        assertThat(ByHand.contradiction(List.of(pin), new Hand.LeaveOut("O-1")))
                .startsWith("cannot be pinned for an order that is left out");
        assertThat(ByHand.contradiction(List.of(new Hand.Keep("N1", "O-1")), new Hand.Forbid("N1", null)))
                .startsWith("cannot be kept for an order and left alone at once");
        Hand under = new Hand.Arrange("O-1", Arrangement.UNDERLAID, null);
        assertThat(ByHand.contradiction(List.of(under), new Hand.Arrange("O-1", Arrangement.OVERLAID, null)))
                .startsWith("cannot be made in two ways");
        assertThat(ByHand.contradiction(List.of(under), new Hand.Arrange("O-1", null, Angle.ofDegrees(10))))
                .isNull();
    }
}
