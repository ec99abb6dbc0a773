package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * Worked examples. Their values were drawn and measured as polygons before this program was written; they are printed to 0.01 mm,
 * so they are compared to half of that.
 */
class ScarfJointCheckValuesTest {
    private static final Offset<Double> PRINTED = within(0.005);

    @Test
    void tenDegreesUnderlaid() {
        ScarfJoint joint = ScarfJoint.of(guitar(Arrangement.UNDERLAID, "20", 10));

        assertThat(joint.neckFrontMm()).isCloseTo(457.00, PRINTED);
        assertThat(joint.neckBackMm()).isCloseTo(570.43, PRINTED);
        assertThat(joint.headFrontMm()).isCloseTo(64.82, PRINTED);
        assertThat(joint.headBackMm()).isCloseTo(149.89, PRINTED);
        assertThat(joint.glueFaceMm()).isCloseTo(86.38, PRINTED);
        assertThat(joint.seamFromNutMm()).isCloseTo(115.18, PRINTED);
        assertThat(joint.backEndFromNutMm()).isCloseTo(27.04, PRINTED);
        assertThat(joint.wingWidthMm()).isCloseTo(9.00, PRINTED);
    }

    @Test
    void tenDegreesOverlaid() {
        ScarfJoint joint = ScarfJoint.of(guitar(Arrangement.OVERLAID, "20", 10));

        assertThat(joint.neckFrontMm()).isCloseTo(370.62, PRINTED);
        assertThat(joint.neckBackMm()).isCloseTo(484.04, PRINTED);
        assertThat(joint.headFrontMm()).isCloseTo(180.00, PRINTED);
        assertThat(joint.headBackMm()).isCloseTo(265.07, PRINTED);
        assertThat(joint.glueFaceMm()).isCloseTo(115.18, PRINTED);
        assertThat(joint.backEndFromNutMm()).isCloseTo(27.04, PRINTED);
        assertThat(joint.hasSeam()).isFalse();
        assertThat(joint.seamFromNut()).isNull();
        assertThat(joint.wingWidthMm()).isZero();
    }

    @Test
    void thirteenDegreesThroughAnInchUnderlaid() {
        ScarfJoint joint = ScarfJoint.of(guitar(Arrangement.UNDERLAID, "25.4", 13));

        assertThat(joint.neckFrontMm()).isCloseTo(457.00, PRINTED);
        assertThat(joint.neckBackMm()).isCloseTo(567.02, PRINTED);
        assertThat(joint.headFrontMm()).isCloseTo(67.09, PRINTED);
        assertThat(joint.headBackMm()).isCloseTo(132.06, PRINTED);
        assertThat(joint.glueFaceMm()).isCloseTo(66.68, PRINTED);
        assertThat(joint.seamFromNutMm()).isCloseTo(112.91, PRINTED);
        assertThat(joint.backEndFromNutMm()).isCloseTo(43.34, PRINTED);
    }

    @Test
    void thirteenDegreesThroughAnInchOverlaid() {
        ScarfJoint joint = ScarfJoint.of(guitar(Arrangement.OVERLAID, "25.4", 13));

        assertThat(joint.neckFrontMm()).isCloseTo(390.32, PRINTED);
        assertThat(joint.neckBackMm()).isCloseTo(500.34, PRINTED);
        assertThat(joint.headFrontMm()).isCloseTo(180.00, PRINTED);
        assertThat(joint.headBackMm()).isCloseTo(244.97, PRINTED);
        assertThat(joint.glueFaceMm()).isCloseTo(112.91, PRINTED);
    }

    static JointInput guitar(Arrangement arrangement, String neckThickness, int degrees) {
        return new JointInput(
                arrangement,
                Angle.ofDegrees(degrees),
                Length.ofMm(new BigDecimal(neckThickness)),
                Length.ofMm(15),
                Length.ofMm(457),
                Length.ofMm(180),
                Length.ofMm(60),
                Length.ofMm(78));
    }
}
