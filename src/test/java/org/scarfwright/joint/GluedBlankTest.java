package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** Against the areas of outlines clipped by the JTS Topology Suite, a general geometry library. */
class GluedBlankTest {
    @Test
    void isTheAreaOfBothOutlinesTimesTheirWidths() {
        Random random = new Random(3L);
        int compared = 0;
        for (int i = 0; i < 500; i++) {
            JointInput in = new JointInput(
                    random.nextBoolean() ? Arrangement.UNDERLAID : Arrangement.OVERLAID,
                    new Angle(7_000 + random.nextInt(10_000)),
                    Length.ofMm(15 + random.nextInt(15)),
                    Length.ofMm(10 + random.nextInt(6)),
                    Length.ofMm(400 + random.nextInt(200)),
                    Length.ofMm(150 + random.nextInt(100)),
                    Length.ofMm(50 + random.nextInt(20)),
                    Length.ofMm(60 + random.nextInt(30)));
            if (!ScarfJoint.refusals(in).isEmpty()) {
                continue;
            }
            ClippedJoint clipped = new ClippedJoint(in);
            double cubicMm = clipped.neck.getArea() * in.neckWidth().mm()
                    + clipped.head.getArea() * in.headWidth().mm();

            // Lengths are rounded to a micrometre: that times the largest section is below 10 mm³.
            assertThat(GluedBlank.volume(ScarfJoint.of(in)).toMm3().doubleValue())
                    .isCloseTo(cubicMm, within(10.0));
            compared++;
        }
        assertThat(compared).isGreaterThan(300);
    }
}
