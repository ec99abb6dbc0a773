package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** Tuner holes, volute, heel and the wedge that falls off: arithmetic a person can do beside it. */
class PartsBesideTheJointTest {
    private static final JointInput UNDERLAID = ScarfJointCheckValuesTest.guitar(Arrangement.UNDERLAID, "20", 10);

    /** The seam of the worked example lies 115.175 mm from the nut. */
    @Test
    void warnsOfHolesWithinFiveMillimetresOfTheSeam() {
        TunerHoles holes = new TunerHoles(
                List.of(mm(30), Length.ofUm(110_174), Length.ofUm(110_176), mm(118), Length.ofUm(120_176)));

        assertThat(holes.nearSeam(ScarfJoint.of(UNDERLAID))).containsExactly(Length.ofUm(110_176), mm(118));
        assertThat(holes.nearSeam(ScarfJoint.of(UNDERLAID.with(Arrangement.OVERLAID))))
                .isEmpty();
    }

    @Test
    void exactlyFiveMillimetresIsStillTooNear() {
        Length seam = Length.ofUm(115_175);

        assertThat(new TunerHoles(List.of(seam.plus(mm(5)), seam.minus(mm(5)))).nearSeam(ScarfJoint.of(UNDERLAID)))
                .hasSize(2);
        assertThat(TunerHoles.distance(mm(110), mm(115))).isEqualTo(mm(5));
        assertThat(TunerHoles.distance(mm(120), mm(115))).isEqualTo(mm(5));
        assertThat(TunerHoles.distance(mm(115), mm(115))).isEqualTo(Length.ZERO);
    }

    @Test
    void holesLieBetweenNutAndTip() {
        TunerHoles holes = new TunerHoles(List.of(Length.ZERO, Length.ofUm(1), mm(179), mm(180), mm(181)));

        assertThat(holes.offTheHead(mm(180))).containsExactly(Length.ZERO, mm(180), mm(181));
    }

    /** 8 mm more through the bevel at 10°: 8 / sin 10° = 46.07 mm of seam, 8 / tan 10° = 45.37 mm of neck. */
    @Test
    void aVoluteFromTheNeckMovesTheSeamAndOneFromTheHeadDoesNot() {
        VoluteNeed volute = new VoluteNeed(mm(8));
        ScarfJoint plain = ScarfJoint.of(UNDERLAID);
        ScarfJoint thick = ScarfJoint.of(volute.fromTheNeck(UNDERLAID));

        assertThat(thick.input().neckThickness()).isEqualTo(mm(28));
        assertThat(thick.seamFromNutMm() - plain.seamFromNutMm()).isCloseTo(46.07, within(0.005));
        assertThat(thick.neckBackMm() - plain.neckBackMm()).isCloseTo(45.37, within(0.005));
        assertThat(volute.headStock(UNDERLAID)).isEqualTo(mm(23));
    }

    @Test
    void aHeelIsOneBlockOrAStackOfLayers() {
        HeelNeed heel = new HeelNeed(mm(95), mm(100), mm(20), mm(20));

        assertThat(heel.block()).isEqualTo(mm(75));
        assertThat(heel.layers()).isEqualTo(4);
        assertThat(heel.lastLayer()).isEqualTo(mm(15));
        assertThat(heel.stockLength(mm(3))).isEqualTo(mm(409));
    }

    @Test
    void wholeLayersAreNotPlanedAndAShallowHeelTakesNone() {
        HeelNeed whole = new HeelNeed(mm(60), mm(90), mm(20), mm(20));
        HeelNeed none = new HeelNeed(mm(20), mm(90), mm(20), mm(20));
        HeelNeed shallower = new HeelNeed(mm(15), mm(90), mm(20), mm(20));

        assertThat(whole.layers()).isEqualTo(2);
        assertThat(whole.lastLayer()).isEqualTo(mm(20));
        for (HeelNeed heel : List.of(none, shallower)) {
            assertThat(heel.block()).isEqualTo(Length.ZERO);
            assertThat(heel.layers()).isZero();
            assertThat(heel.lastLayer()).isEqualTo(Length.ZERO);
            assertThat(heel.stockLength(mm(3))).isEqualTo(Length.ZERO);
        }
    }

    /** 20 / tan 10° = 113.426. */
    @Test
    void theWedgeThatFallsOffHasTheJointsAngle() {
        assertThat(new WedgeOffcut(Angle.ofDegrees(10), mm(20), mm(60)).length().mm())
                .isCloseTo(113.426, within(0.0006));
    }

    private static Length mm(long mm) {
        return Length.ofMm(mm);
    }
}
