package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** What a cut asks of a saw. The cut through 20 mm at 10° is 115.18 mm long (worked example, drawn as a polygon). */
class SawNeedTest {
    private static final SawLimits SMALL =
            new SawLimits(Length.ofMm(65), Length.ofMm(100), Angle.ofDegrees(4), Angle.ofDegrees(15));
    private static final SawLimits LARGE =
            new SawLimits(Length.ofMm(150), Length.ofMm(300), Angle.ofDegrees(3), Angle.ofDegrees(45));

    @Test
    void tellsReachAndDepthOfACut() {
        SawNeed need = new SawNeed(Angle.ofDegrees(10), Length.ofMm(20), Length.ofMm(78));

        assertThat(need.reach().mm()).isCloseTo(115.18, within(0.005));
        assertThat(need.depth()).isEqualTo(Length.ofMm(78));
        assertThat(need.refusals(LARGE)).isEmpty();
    }

    @Test
    void tellsEveryReasonAtOnceWithWhatWouldFit() {
        assertThat(new SawNeed(Angle.ofDegrees(10), Length.ofMm(20), Length.ofMm(78)).refusals(SMALL))
                .containsExactly(
                        "cuts 65 mm deep, but the piece on edge is 78 mm wide: rip it to 65 mm or less, or use a deeper saw",
                        "reaches 100 mm along a cut, but 10° through 20 mm is 115.2 mm long: thin the piece to 17.3 mm first, "
                                + "use an angle of at least 11.6°, or use a saw that reaches further");
    }

    @Test
    void whatTheReachSentenceSuggestsFits() {
        assertThat(new SawNeed(Angle.ofDegrees(10), Length.ofMm(new BigDecimal("17.3")), Length.ofMm(60))
                        .refusals(SMALL))
                .isEmpty();
        assertThat(new SawNeed(new Angle(11_600), Length.ofMm(20), Length.ofMm(60)).refusals(SMALL))
                .isEmpty();
    }

    @Test
    void refusesAnglesOffTheScale() {
        assertThat(new SawNeed(Angle.ofDegrees(3), Length.ofMm(4), Length.ofMm(60)).refusals(SMALL))
                .isEqualTo(List.of("cannot be set to 3°; its shallowest is 4°: use a steeper angle, or another saw"));
        assertThat(new SawNeed(new Angle(15_001), Length.ofMm(20), Length.ofMm(60)).refusals(SMALL))
                .isEqualTo(List.of(
                        "cannot be set to 15.001°; its steepest is 15°: use a shallower angle, or another saw"));
    }

    @Test
    void aLimitThatIsJustMetIsNoReason() {
        SawNeed need = new SawNeed(Angle.ofDegrees(15), Length.ofMm(20), Length.ofMm(65));

        assertThat(need.refusals(
                        new SawLimits(Length.ofMm(65), need.reach(), Angle.ofDegrees(15), Angle.ofDegrees(15))))
                .isEmpty();
    }

    @Test
    void aWedgeRisesWithItsBase() {
        // A right triangle of 45° is as high as it is long; tan 10° = 0.17633 (any table of tangents).
        assertThat(new JigWedge(Angle.ofDegrees(45), Length.ofMm(250)).rise()).isEqualTo(Length.ofMm(250));
        assertThat(new JigWedge(Angle.ofDegrees(10), Length.ofMm(300)).rise().mm())
                .isCloseTo(52.899, within(0.001));
    }
}
