package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** What is refused, and the sentence a person reads. The lengths in them follow from the planes, see {@link ScarfJoint}. */
class ImpossibleJointTest {

    @Test
    void refusesASeamThatWouldFallOffTheTip() {
        assertThat(refusals(joint(Arrangement.UNDERLAID, "10", "20", "15", "457", "100")))
                .containsExactly(
                        new JointRefusal(
                                "headLength",
                                "100 mm",
                                "is 100 mm, but at 10° in a neck 20 mm thick the seam comes 115.2 mm from the nut and would fall off "
                                        + "the tip; make the head at least 115.2 mm, the angle at least 11.6°, or overlay the head"));
    }

    @Test
    void whatTheSeamSentenceSuggestsIsPossible() {
        assertPossible(joint(Arrangement.UNDERLAID, "10", "20", "15", "457", "115.2"));
        assertPossible(joint(Arrangement.UNDERLAID, "11.6", "20", "15", "457", "100"));
        assertPossible(joint(Arrangement.OVERLAID, "10", "20", "15", "457", "100"));
        assertThat(refusals(joint(Arrangement.UNDERLAID, "30", "20", "15", "457", "40")))
                .as("a seam exactly on the tip is no head")
                .hasSize(1);
    }

    @Test
    void suggestsNoAngleWhereTheNeckIsThickerThanTheHeadIsLong() {
        assertThat(refusals(joint(Arrangement.UNDERLAID, "10", "20", "15", "457", "18")))
                .singleElement()
                .satisfies(r -> assertThat(r.reason()).doesNotContain("the angle at least"));
    }

    @Test
    void refusesAnOverlaidHeadThatTakesTheWholeTopOfTheNeck() {
        assertThat(refusals(joint(Arrangement.OVERLAID, "10", "20", "15", "80", "180")))
                .containsExactly(
                        new JointRefusal(
                                "neckLength",
                                "80 mm",
                                "is 80 mm, but at 10° a head piece 15 mm thick takes 86.4 mm of the neck's top and nothing would be left "
                                        + "of it; make the neck at least 86.4 mm, the angle steeper, the head thinner, or underlay the head"));
        assertPossible(joint(Arrangement.OVERLAID, "10", "20", "15", "86.4", "180"));
    }

    @Test
    void refusesAGlueFaceThatRunsOffTheTipOfAnOverlaidHead() {
        assertThat(refusals(joint(Arrangement.OVERLAID, "10", "30", "8", "457", "100")))
                .containsExactly(
                        new JointRefusal(
                                "headLength",
                                "100 mm",
                                "is 100 mm, but the glue face is 172.8 mm long and would run off the tip of the head piece's back, which "
                                        + "is 145.4 mm; make the head at least 127.4 mm, the angle steeper or the neck thinner"));
        assertPossible(joint(Arrangement.OVERLAID, "10", "30", "8", "457", "127.4"));
    }

    @Test
    void refusesAGlueFaceThatRunsOffTheHeelOfAnUnderlaidNeck() {
        assertThat(refusals(joint(Arrangement.UNDERLAID, "5", "10", "30", "200", "180")))
                .containsExactly(
                        new JointRefusal(
                                "neckLength",
                                "200 mm",
                                "is 200 mm, but the glue face is 344.2 mm long and would run off the heel end of the neck's back, which "
                                        + "is 314.3 mm; make the neck at least 230.0 mm, the angle steeper or the head thinner"));
        assertPossible(joint(Arrangement.UNDERLAID, "5", "10", "30", "230.0", "180"));
    }

    @Test
    void refusesAnglesThatAreNoTilt() {
        for (String degrees : List.of("0", "90", "135")) {
            assertThat(refusals(joint(Arrangement.UNDERLAID, degrees, "20", "15", "457", "180")))
                    .containsExactly(
                            new JointRefusal(
                                    "angle",
                                    degrees + "°",
                                    "is " + degrees
                                            + "°, but a tilt angle lies between 0° and 90°; usual are 7° to 17°, for example 10"));
        }
        assertPossible(joint(Arrangement.OVERLAID, "89.999", "20", "15", "457", "180"));
    }

    @Test
    void tellsEverySizeThatIsNothingAtOnce() {
        JointInput nothing = joint(Arrangement.UNDERLAID, "10", "0", "0", "0", "0");

        assertThat(refusals(nothing))
                .extracting(JointRefusal::field)
                .containsExactly("neckThickness", "headThickness", "neckLength", "headLength");
        assertThat(refusals(nothing).get(0).reason()).isEqualTo("is 0 mm; it must be above 0, for example 20 mm");
    }

    @Test
    void refusesSizesBelowNothingAndWidthsOfNothing() {
        JointInput in = new JointInput(
                Arrangement.OVERLAID,
                Angle.ofDegrees(10),
                Length.ofMm(-20),
                Length.ofMm(15),
                Length.ofMm(457),
                Length.ofMm(180),
                Length.ZERO,
                Length.ofMm(-1));

        assertThat(refusals(in))
                .extracting(JointRefusal::field)
                .containsExactly("neckThickness", "neckWidth", "headWidth");
    }

    @Test
    void theExceptionCarriesEveryRefusal() {
        JointInput in = joint(Arrangement.UNDERLAID, "0", "0", "15", "457", "180");

        assertThatExceptionOfType(ImpossibleJointException.class)
                .isThrownBy(() -> ScarfJoint.of(in))
                .satisfies(e -> assertThat(e.refusals()).hasSize(2))
                .withMessageContaining("neckThickness is 0 mm");
    }

    @Test
    void aHeadThickerThanTheNeckCanBeButIsRefusedInADesign() {
        JointInput in = joint(Arrangement.UNDERLAID, "10", "20", "25.4", "457", "180");

        assertPossible(in);
        assertThat(DesignRules.headThickerThanNeckStock(in.headThickness(), in.neckThickness()))
                .hasValueSatisfying(r -> {
                    assertThat(r.field()).isEqualTo("headThickness");
                    assertThat(r.reason())
                            .isEqualTo(
                                    "is 25.4 mm, thicker than the neck stock of 20 mm; make the head at most 20 mm or the neck thicker");
                });
        assertThat(DesignRules.headThickerThanNeckStock(Length.ofMm(20), Length.ofMm(20)))
                .isEmpty();
    }

    @Test
    void designsKeepToAnglesFromThreeToThirtyDegrees() {
        assertThat(DesignRules.angleOutOfRange(Angle.ofDegrees(3))).isEmpty();
        assertThat(DesignRules.angleOutOfRange(Angle.ofDegrees(30))).isEmpty();
        assertThat(DesignRules.angleOutOfRange(new Angle(2_999)))
                .hasValueSatisfying(r ->
                        assertThat(r.reason()).isEqualTo("is 2.999°; a design takes 3° to 30°, usual are 7° to 17°"));
        assertThat(DesignRules.angleOutOfRange(new Angle(30_001))).isPresent();
        assertThat(DesignRules.usual(Angle.ofDegrees(17))).isTrue();
        assertThat(DesignRules.usual(Angle.ofDegrees(18))).isFalse();
    }

    private static List<JointRefusal> refusals(JointInput in) {
        return ScarfJoint.refusals(in);
    }

    private static void assertPossible(JointInput in) {
        assertThat(ScarfJoint.refusals(in)).isEmpty();
    }

    private static JointInput joint(
            Arrangement arrangement, String degrees, String t, String h, String neckLength, String headLength) {
        return new JointInput(
                arrangement,
                Angle.ofDegrees(new BigDecimal(degrees)),
                Length.ofMm(new BigDecimal(t)),
                Length.ofMm(new BigDecimal(h)),
                Length.ofMm(new BigDecimal(neckLength)),
                Length.ofMm(new BigDecimal(headLength)),
                Length.ofMm(60),
                Length.ofMm(78));
    }
}
