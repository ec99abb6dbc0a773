package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.WoodOnTheRack;
import org.scarfwright.necks.WoodOnTheRack.PartWood;
import org.scarfwright.necks.WoodOnTheRack.Serving;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.Pieces;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/**
 * Which pieces could give the parts of a joint that is no design yet.
 *
 * <p>Worked example: N 457, H 180, t 20, h 15, 10°: neck 457.00 / 570.43 underlaid, 370.62 / 484.04 overlaid. On the shop's band saw
 * 2 mm of allowance, 1.5 mm of truing and 1 / sin 10° = 5.76 mm of kerf are added.
 */
@OnH2
@Transactional
class RackForJointTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    WoodOnTheRack rack;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    @Test
    void tellsWhatEachArrangementAsks() {
        Serving under = rack.serving(joint(Arrangement.UNDERLAID));
        Serving over = rack.serving(joint(Arrangement.OVERLAID));

        assertThat(under.neck().length().mm()).isBetween(579.68, 579.70);
        assertThat(over.neck().length().mm()).isBetween(493.29, 493.32);
        assertThat(under.neck().width()).isEqualTo(Length.ofMm(62));
        assertThat(under.head().width()).isEqualTo(Length.ofMm(80));
        assertThat(under.neck().thickness()).isEqualTo(Length.ofMm(20));
        assertThat(under.head().thickness()).isEqualTo(Length.ofMm(15));
    }

    @Test
    void anEmptyRackServesNothingAndHasNoNearest() {
        PartWood neck = rack.serving(joint(Arrangement.UNDERLAID)).neck();

        assertThat(neck.pieces()).isEmpty();
        assertThat(neck.serving()).isZero();
        assertThat(neck.nearest()).isNull();
        assertThat(neck.all()).isTrue();
    }

    @Test
    void aPieceTooShortUnderlaidServesOverlaid() {
        add("SHORT-1", "520", "70", "24");
        PartWood under = rack.serving(joint(Arrangement.UNDERLAID)).neck();
        PartWood over = rack.serving(joint(Arrangement.OVERLAID)).neck();

        assertThat(under.pieces()).isEmpty();
        WoodOnTheRack.Nearest nearest = Objects.requireNonNull(under.nearest());
        assertThat(nearest.piece()).isEqualTo("SHORT-1");
        assertThat(nearest.reasons()).singleElement().asString().contains("59.7 mm too short underlaid");
        assertThat(over.pieces()).containsExactly("SHORT-1");
        assertThat(over.nearest()).isNull();
    }

    @Test
    void theNearestIsTheOneThatLacksLeast() {
        add("FAR-1", "300", "70", "24");
        add("NEAR-1", "570", "70", "24");
        WoodOnTheRack.Nearest nearest = Objects.requireNonNull(
                rack.serving(joint(Arrangement.UNDERLAID)).neck().nearest());

        assertThat(nearest.piece()).isEqualTo("NEAR-1");
        assertThat(nearest.reasons()).singleElement().asString().contains("9.7 mm too short");
    }

    @Test
    void aLargePieceThatIsNotFlatDoesNotServe() {
        add("BENT-1", "700", "70", "22", "15");
        PartWood neck = rack.serving(joint(Arrangement.UNDERLAID)).neck();

        assertThat(neck.pieces()).isEmpty();
        assertThat(Objects.requireNonNull(neck.nearest()).piece()).isEqualTo("BENT-1");
    }

    @Test
    void namesEightPiecesInOrderAndCountsThemAll() {
        for (int i = 19; i >= 10; i--) {
            add("LONG-" + i, "700", "70", "24");
        }
        PartWood neck = rack.serving(joint(Arrangement.UNDERLAID)).neck();

        assertThat(neck.serving()).isEqualTo(10);
        assertThat(neck.pieces()).hasSize(8).startsWith("LONG-10", "LONG-11").endsWith("LONG-17");
        assertThat(neck.nearest()).isNull();
    }

    private void add(String code, String length, String width, String thickness) {
        add(code, length, width, thickness, "0");
    }

    private void add(String code, String length, String width, String thickness, String bow) {
        Map<String, String> texts = Map.of(
                "code",
                code,
                "wood",
                "maple_sugar",
                "length",
                length,
                "width",
                width,
                "thickness",
                thickness,
                "bow",
                bow);
        pieces.add(PieceCells.of(texts::get), LengthUnit.MM);
    }

    private static ScarfJoint joint(Arrangement arrangement) {
        return ScarfJoint.of(new JointInput(
                arrangement,
                Angle.ofDegrees(10),
                Length.ofMm(20),
                Length.ofMm(15),
                Length.ofMm(457),
                Length.ofMm(180),
                Length.ofMm(60),
                Length.ofMm(78)));
    }
}
