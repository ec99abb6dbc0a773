package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.scarfwright.matching.Shelf.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;

/**
 * The lengths a piece must give.
 *
 * <p>Source of the figures: the worked example N 457, H 180, t 20, h 15, 10° (neck underlaid 457.00 / 570.43, overlaid 370.62 /
 * 484.04; head underlaid 64.82, overlaid 180.00), from the right triangles of the joint: cot 10° = 5.671282, sin 10° = 0.173648
 * (any table of the functions).
 */
class NeedsTest {
    private static Way way(List<Way> ways, Arrangement arrangement) {
        return ways.stream()
                .filter(w -> w.arrangement() == arrangement)
                .findFirst()
                .orElseThrow();
    }

    private static void near(Length actual, String millimetres) {
        assertThat(actual.mm()).isCloseTo(mm(millimetres).mm(), offset(0.006));
    }

    @Test
    void asksForTheWorkedExamplesLengths() {
        List<Way> ways = Way.of(Shelf.design().build());
        assertThat(ways).hasSize(2);
        Way under = way(ways, Arrangement.UNDERLAID);
        Way over = way(ways, Arrangement.OVERLAID);
        Trial neckUnder = Trial.of(under.neck(), board("900", "100", "30"), Shelf.bareShop());
        Trial neckOver = neckUnder.with(over.neck());
        near(neckUnder.shortSide(), "457.00");
        near(neckUnder.longSide(), "570.43");
        near(neckOver.shortSide(), "370.62");
        near(neckOver.longSide(), "484.04");
        near(neckUnder.with(under.head()).shortSide(), "64.82");
        near(neckUnder.with(under.head()).longSide(), "149.89");
        near(neckUnder.with(over.head()).longSide(), "265.07");
    }

    private static Piece board(String length, String width, String thickness) {
        return Shelf.piece("B1", length, width, thickness).build();
    }

    @Test
    void addsEndAllowanceTruingAndTheSawsKerf() {
        Way under = way(Way.of(Shelf.design().allowances("3", "2").build()), Arrangement.UNDERLAID);
        Trial t = Trial.of(under.neck(), board("900", "100", "30"), Shelf.shop());
        assertThat(t.shortSide()).isEqualTo(mm("461.5")); // 457 + 3 + 1.5
        near(t.section(), "580.68"); // 461.5 + 113.4256 + 1 / 0.173648
    }

    @Test
    void roundsEveryNeedUp() {
        // 457 − 15 / sin 10° = 370.618435…: the micrometre above, never below.
        Way over = way(Way.of(Shelf.design().build()), Arrangement.OVERLAID);
        assertThat(over.neck().bare().um()).isEqualTo(370_619);
    }

    @Test
    void underlaidTheNeckIsAsWideAsTheOutlineUnlessWingsAreAllowed() {
        Way wings = way(Way.of(Shelf.design().allowances("0", "2").build()), Arrangement.UNDERLAID);
        Way none = way(Way.of(Shelf.design().allowances("0", "2").noWings().build()), Arrangement.UNDERLAID);
        Way over = way(Way.of(Shelf.design().allowances("0", "2").noWings().build()), Arrangement.OVERLAID);
        assertThat(wings.neck().width()).isEqualTo(mm("62"));
        assertThat(none.neck().width()).isEqualTo(mm("80"));
        assertThat(over.neck().width()).isEqualTo(mm("62"));
        assertThat(over.head().width()).isEqualTo(mm("80"));
    }

    @Test
    void wingsMakeUpHalfOfWhatIsMissingEach() {
        Way wings = way(Way.of(Shelf.design().build()), Arrangement.UNDERLAID);
        assertThat(wings.neck().wing(mm("60"))).isEqualTo(mm("9")); // (78 − 60) / 2
        assertThat(wings.neck().wing(mm("78"))).isNull();
    }

    @Test
    void leavesOutTheArrangementWhoseSeamFallsOffTheTip() {
        // t / sin a = 20 / sin 10° = 115.18: a head of 110 ends before it.
        List<Way> ways = Way.of(Shelf.design().head("110", "78", "15").build());
        assertThat(ways).extracting(Way::arrangement).containsExactly(Arrangement.OVERLAID);
        assertThat(Way.impossible(Shelf.design().head("110", "78", "15").build()))
                .singleElement()
                .satisfies(r -> {
                    assertThat(r.rule()).isEqualTo("seam");
                    assertThat(r.reason())
                            .startsWith("underlaid at 10° cannot be: the head is 110 mm")
                            .contains("115.2 mm from the nut");
                });
    }

    @Test
    void triesEveryAllowedAngle() {
        assertThat(Way.of(Shelf.design().angles(10, 13).build()))
                .extracting(w -> w.arrangement().word() + " " + w.angle())
                .containsExactly("underlaid 10°", "underlaid 13°", "overlaid 10°", "overlaid 13°");
    }
}
