package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** Against distances measured by the JTS Topology Suite, and a section cut into thin layers. */
class NutSectionTest {
    private static final NutSection SECTION = new NutSection(Length.ofMm(45), Length.ofMm(16));

    @Test
    void theArmIsTheDistanceOfTheStringFromTheMiddleOfTheSection() {
        Random random = new Random(11L);
        for (int i = 0; i < 1_000; i++) {
            double tilt = 3 + random.nextInt(27);
            StringPath path = new StringPath(
                    new Angle((int) (tilt * 1000)),
                    Length.ofMm(random.nextInt(15)),
                    Length.ofMm(random.nextInt(20)),
                    Length.ofMm(30 + random.nextInt(150)));
            NutSection section = new NutSection(Length.ofMm(45), Length.ofMm(5 + random.nextInt(30)));
            AffineTransformation turned = AffineTransformation.rotationInstance(-Math.toRadians(tilt));
            Coordinate winding = turned.transform(
                    new Coordinate(path.postDistance().mm(), path.postHeight().mm()), new Coordinate());
            Coordinate middle =
                    turned.transform(new Coordinate(0, -section.thickness().mm() / 2), new Coordinate());
            Coordinate slot = new Coordinate(0, path.slot().mm());

            assertThat(section.arm(path))
                    .isCloseTo(Distance.pointToLinePerpendicular(middle, slot, winding), within(1e-9));
        }
    }

    @Test
    void theStressIsTheOneThatBalancesTheMomentLayerByLayer() {
        StringPath path = new StringPath(Angle.ofDegrees(10), Length.ofMm(7), Length.ofMm(10), Length.ofMm(60));
        double stress = SECTION.stressMpa(120, path);

        // Stress grows evenly from the middle; each layer adds its force times its distance.
        int layers = 100_000;
        double thickness = 16.0 / layers;
        double moment = 0;
        for (int i = 0; i < layers; i++) {
            double from = -8 + (i + 0.5) * thickness;
            moment += stress * from / 8 * 45 * thickness * from;
        }

        assertThat(moment / 1000).isCloseTo(SECTION.momentNm(120, path), within(1e-6));
        assertThat(SECTION.momentNm(120, path)).isCloseTo(120 * SECTION.arm(path) / 1000, within(1e-12));
        assertThat(stress).isPositive();
    }

    @Test
    void refusesWhatIsNoSection() {
        assertThatThrownBy(() -> new NutSection(Length.ZERO, Length.ofMm(16))).hasMessageStartingWith("no section");
        assertThatThrownBy(() -> new NutSection(Length.ofMm(45), Length.ZERO)).hasMessageStartingWith("no section");
    }
}
