package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.matching.Shelf.mm;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;

/** What one plan does otherwise than another, in sentences. */
class PlanComparisonTest {
    private static Plan.Part part(String piece) {
        return new Plan.Part(piece, 1, mm("0"), mm("1"), false, mm("1"), mm("1"), mm("1"), mm("1"));
    }

    private static Plan.Pairing neck(String order, int number, String neck, String head) {
        return neck(order, number, Arrangement.UNDERLAID, 10, part(neck), part(head));
    }

    private static Plan.Pairing neck(
            String order, int number, Arrangement arrangement, int degrees, Plan.Part neck, Plan.Part head) {
        return new Plan.Pairing(
                order, number, "D-1", arrangement, Angle.ofDegrees(degrees), neck, head, null, null, List.of());
    }

    private static Plan plan(List<Plan.Unfilled> unfilled, Plan.Pairing... pairings) {
        List<Plan.PieceLayout> layouts = new ArrayList<>();
        for (Plan.Pairing p : pairings) {
            for (String code : List.of(p.neck().piece(), p.head().piece())) {
                layouts.add(new Plan.PieceLayout(
                        code,
                        0,
                        mm("1"),
                        mm("1"),
                        mm("1"),
                        mm("1"),
                        "S",
                        List.of(),
                        List.of(),
                        List.of(),
                        Plan.Books.NOTHING));
            }
        }
        return new Plan(
                1,
                "2026-W49",
                Plan.State.PROPOSED,
                Plan.Status.PROVED,
                Instant.EPOCH,
                "by hand",
                0,
                pairings.length,
                9,
                List.of(
                        new Plan.Level("necks made", BigDecimal.ONE, BigDecimal.ONE, "count"),
                        new Plan.Level("book value", new BigDecimal("12.50"), new BigDecimal("12.50"), "money")),
                List.of(pairings),
                layouts,
                unfilled,
                Plan.Books.NOTHING);
    }

    private static List<String> differences(Plan.Pairing before, Plan.Pairing after) {
        return PlanComparison.of(plan(List.of(), before), plan(List.of(), after))
                .orders()
                .get(0)
                .differences();
    }

    @Test
    void saysWhichPieceIsTakenInsteadOfWhich() {
        assertThat(differences(neck("O-1", 1, "N1", "H1"), neck("O-1", 1, "N2", "H1")))
                .containsExactly("Neck from N2 instead of N1.");
        assertThat(differences(neck("O-1", 1, "N1", "H1"), neck("O-1", 1, "N2", "H2")))
                .containsExactly("Neck from N2 instead of N1, head from H2 instead of H1.");
        assertThat(differences(neck("O-1", 1, "N1", "H1"), neck("O-1", 2, "N1", "H1")))
                .as("necks of one order are alike")
                .isEmpty();
    }

    @Test
    void saysWhichWayItIsMadeInsteadOfWhich() {
        assertThat(differences(
                        neck("O-1", 1, "N1", "H1"), neck("O-1", 1, Arrangement.OVERLAID, 13, part("N1"), part("H1"))))
                .containsExactly("Overlaid instead of underlaid, at 13° instead of 10°.");
    }

    @Test
    void countsNecksThatOnlyOneMakesAndOrdersOnlyOneHas() {
        Plan.Unfilled missing = new Plan.Unfilled("O-1", "D-1", 1, List.of(), null);
        PlanComparison c = PlanComparison.of(
                plan(List.of(), neck("O-1", 1, "N1", "H1"), neck("O-1", 2, "N2", "N2"), neck("O-3", 1, "N3", "H3")),
                plan(List.of(missing), neck("O-1", 1, "N1", "H1"), neck("O-2", 1, "N4", "H3")));
        assertThat(c.orders()).extracting(PlanComparison.OrderPair::order).containsExactly("O-1", "O-2", "O-3");
        assertThat(c.orders().get(0).differences())
                .containsExactly("One neck less: not underlaid at 10°, both from N2.");
        assertThat(c.orders().get(0).firstMissing()).isZero();
        assertThat(c.orders().get(0).secondMissing()).isEqualTo(1);
        assertThat(c.orders().get(1).differences()).containsExactly("One neck more: underlaid at 10°, N4 and H3.");
        assertThat(c.differing()).isEqualTo(3);
        assertThat(c.onlyFirst()).containsExactly("N2", "N3");
        assertThat(c.onlySecond()).containsExactly("N4");
        assertThat(c.shared()).containsExactly("H1", "H3", "N1");
        assertThat(c.extraCost()).isEqualByComparingTo("0");
    }
}
