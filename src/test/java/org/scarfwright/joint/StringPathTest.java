package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.scarfwright.measure.Length;

/** Against a level head with its post, turned about the nut by the JTS Topology Suite, a general geometry library. */
class StringPathTest {

    @Test
    void breaksAsAHeadThatWasTurnedAboutTheNut() {
        Random random = new Random(20_261_125L);
        for (int i = 0; i < 2_000; i++) {
            int tilt = 1_000 + random.nextInt(44_000);
            Length slot = Length.ofUm(random.nextInt(20_000));
            Length height = Length.ofUm(random.nextInt(40_000));
            Length distance = Length.ofUm(5_000 + random.nextInt(200_000));
            StringPath path = new StringPath(new org.scarfwright.measure.Angle(tilt), slot, height, distance);

            Coordinate winding = new Coordinate(distance.mm(), height.mm());
            AffineTransformation.rotationInstance(-Math.toRadians(tilt / 1000.0))
                    .transform(winding, winding);
            Coordinate nut = new Coordinate(0, slot.mm());

            assertThat(path.breakRadians()).isCloseTo(-Angle.angle(nut, winding), within(1e-9));
            assertThat(path.pressesOnNut()).isEqualTo(winding.y < nut.y);
        }
    }

    @Test
    void breaksAtTheTiltWhereSlotAndWindingLieOnTheFace() {
        StringPath path = path(0, 0);

        assertThat(path.breakDegrees()).isCloseTo(10, within(1e-9));
        assertThat(path.pressesOnNut()).isTrue();
    }

    @Test
    void doesNotPressWhereTheWindingIsAsHighAsTheSlot() {
        assertThat(path(0, 20).pressesOnNut()).isFalse();
        assertThat(path(0, 20).breakDegrees()).isNegative();
    }

    private static StringPath path(int slotMm, int heightMm) {
        return new StringPath(
                org.scarfwright.measure.Angle.ofDegrees(10),
                Length.ofMm(slotMm),
                Length.ofMm(heightMm),
                Length.ofMm(60));
    }
}
