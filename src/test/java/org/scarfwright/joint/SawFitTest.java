package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** What a saw could do, what its scale leaves uncertain, and what a test cut must measure. Sines and tangents as in any table. */
class SawFitTest {
    private static final SawLimits SMALL =
            new SawLimits(Length.ofMm(65), Length.ofMm(100), Angle.ofDegrees(4), Angle.ofDegrees(15));

    /** 100 · sin 10° = 17.365; arcsin(20 / 100) = 11.537°. */
    @Test
    void tellsTheThickestPieceAndTheShallowestAngle() {
        SawFit fit = new SawFit(new SawNeed(Angle.ofDegrees(10), Length.ofMm(20), Length.ofMm(60)), SMALL);

        assertThat(fit.greatestThickness()).isEqualTo(Length.ofUm(17_364));
        assertThat(fit.greatestWidth()).isEqualTo(Length.ofMm(65));
        assertThat(fit.shallowest()).isEqualTo(new Angle(11_537));
        assertThat(fit.reachesThrough()).isTrue();
    }

    @Test
    void itsOwnShallowestCountsWhereItReachesFurther() {
        assertThat(thick(5).shallowest()).isEqualTo(Angle.ofDegrees(4));
        assertThat(thick(25).shallowest()).isEqualTo(new Angle(14_478));
        assertThat(thick(25).reachesThrough()).isTrue();
    }

    @Test
    void saysWhenNoAngleOfTheSawReachesThrough() {
        assertThat(thick(26).reachesThrough()).isFalse();
        assertThat(thick(100).reachesThrough()).isFalse();
        assertThat(thick(120).shallowest()).isEqualTo(Angle.ofDegrees(90));
        SawLimits square = new SawLimits(Length.ofMm(65), Length.ofMm(20), Angle.ofDegrees(4), Angle.ofDegrees(90));
        SawNeed need = new SawNeed(Angle.ofDegrees(45), Length.ofMm(20), Length.ofMm(60));
        assertThat(new SawFit(need, square).reachesThrough()).isFalse();
    }

    @Test
    void whatItSaysWouldFitFits() {
        SplittableRandom random = new SplittableRandom(41);
        for (int i = 0; i < 2_000; i++) {
            Angle angle = new Angle(random.nextInt(4_000, 15_001));
            Length thickness = Length.ofUm(random.nextLong(3_000, 25_000));
            SawFit fit = new SawFit(new SawNeed(angle, thickness, Length.ofMm(60)), SMALL);

            assertThat(new SawNeed(angle, fit.greatestThickness(), fit.greatestWidth()).refusals(SMALL))
                    .isEmpty();
            assertThat(new SawNeed(fit.shallowest(), thickness, Length.ofMm(60)).refusals(SMALL))
                    .isEmpty();
            assertThat(new SawNeed(angle, fit.greatestThickness().plus(Length.ofUm(2)), Length.ofMm(60))
                            .refusals(SMALL))
                    .hasSize(1);
        }
    }

    /** 115.18 · tan 0.5° = 1.005 mm; 180 · tan 0.25° = 0.785 mm. */
    @Test
    void aScaleReadToHalfADegree() {
        ScaleReading scale = new ScaleReading(new Angle(500));

        assertThat(scale.setting()).isEqualTo(new Angle(250));
        assertThat(scale.gap(Length.ofUm(115_175)).mm()).isCloseTo(1.005, within(0.0005));
        assertThat(scale.atTip(Length.ofMm(180)).mm()).isCloseTo(0.785, within(0.0005));
        assertThat(new ScaleReading(new Angle(101)).setting())
                .as("half, rounded up")
                .isEqualTo(new Angle(51));
    }

    /** 20 / tan 10° = 113.426; 20 / tan 9.5° = 119.515; 20 / tan 10.5° = 107.910; tan 20° = 0.36397. */
    @Test
    void aTestCutThroughTwentyMillimetresAtTenDegrees() {
        TestCut cut = new TestCut(Angle.ofDegrees(10), Length.ofMm(20));

        assertThat(cut.run().mm()).isCloseTo(113.426, within(0.0006));
        assertThat(cut.longerWhenShallow().mm()).isCloseTo(119.515 - 113.426, within(0.0015));
        assertThat(cut.shorterWhenSteep().mm()).isCloseTo(113.426 - 107.910, within(0.0015));
        assertThat(cut.doubled()).isEqualTo(Angle.ofDegrees(20));
        assertThat(cut.doubledRise(Length.ofMm(100)).mm()).isCloseTo(36.397, within(0.0006));
    }

    /** A wedge of 10° that backs a run of 113.4 mm: 220 mm long, 220 · 0.17633 = 38.79 high, 220 / 0.98481 = 223.39 along its face. */
    @Test
    void aJigBacksTheWholeBevel() {
        JigWedge jig = JigWedge.backing(Length.ofMm(20), Angle.ofDegrees(10));

        assertThat(jig.base()).isEqualTo(Length.ofMm(220));
        assertThat(jig.rise().mm()).isCloseTo(38.792, within(0.001));
        assertThat(jig.face().mm()).isCloseTo(223.394, within(0.001));
        assertThat(JigWedge.backing(Length.ofMm(100), Angle.ofDegrees(45)).base())
                .as("a whole number of centimetres stays")
                .isEqualTo(Length.ofMm(200));
    }

    /** tan(10° + e) = (38.792 + 1) / 220 gives e = 0.253°; on 45° one millimetre in 100 is 0.285°. */
    @Test
    void aMillimetreInTheRiseIsAFractionOfADegree() {
        assertThat(new JigWedge(Angle.ofDegrees(10), Length.ofMm(220))
                        .angleOff(Length.ofMm(1))
                        .millidegrees())
                .isBetween(252, 254);
        assertThat(new JigWedge(Angle.ofDegrees(45), Length.ofMm(100))
                        .angleOff(Length.ofMm(1))
                        .millidegrees())
                .isBetween(284, 286);
        assertThat(new JigWedge(Angle.ofDegrees(45), Length.ofMm(100)).angleOff(Length.ZERO))
                .isEqualTo(new Angle(0));
    }

    private static SawFit thick(int mm) {
        return new SawFit(new SawNeed(Angle.ofDegrees(10), Length.ofMm(mm), Length.ofMm(60)), SMALL);
    }

    /** At half a degree the scrap half a degree shallower has no angle left; at 45° two of them open at a right angle. */
    @Test
    void aTestCutTellsAnglesBetweenHalfADegreeAndFortyFive() {
        assertThat(TestCut.canBeMeasured(new Angle(500))).isFalse();
        assertThat(TestCut.canBeMeasured(new Angle(501))).isTrue();
        assertThat(TestCut.canBeMeasured(Angle.ofDegrees(10))).isTrue();
        assertThat(TestCut.canBeMeasured(new Angle(44_999))).isTrue();
        assertThat(TestCut.canBeMeasured(Angle.ofDegrees(45))).isFalse();
    }
}
