package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.math.Vector2D;

/** Against the sum of two pulls as vectors of the JTS Topology Suite. */
class NutLoadTest {

    @Test
    void isTheSumOfBothPulls() {
        Random random = new Random(7L);
        for (int i = 0; i < 1_000; i++) {
            double newtons = random.nextDouble() * 200;
            double turned = random.nextDouble() * Math.PI / 2;
            NutLoad load = new NutLoad(newtons, turned);

            Vector2D along = Vector2D.create(-newtons, 0);
            Vector2D toThePost = Vector2D.create(newtons, 0).rotate(-turned);
            Vector2D sum = along.add(toThePost);

            assertThat(load.resultant()).isCloseTo(sum.length(), within(1e-9));
            assertThat(load.down()).isCloseTo(-sum.getY(), within(1e-9));
            assertThat(load.along()).isCloseTo(-sum.getX(), within(1e-9));
        }
    }

    @Test
    void aRightAngleAndSixtyDegreesAreThoseOfTheTriangle() {
        assertThat(new NutLoad(100, Math.PI / 2).resultant()).isCloseTo(141.42, within(0.005));
        assertThat(new NutLoad(100, Math.PI / 2).down()).isCloseTo(100, within(1e-9));
        assertThat(new NutLoad(100, Math.PI / 3).resultant()).isCloseTo(100, within(1e-9));
        assertThat(new NutLoad(100, 0).resultant()).isZero();
    }

    @Test
    void refusesWhatIsNoLoad() {
        assertThatThrownBy(() -> new NutLoad(-1, 0.1)).hasMessageStartingWith("no load");
        assertThatThrownBy(() -> new NutLoad(1, -0.1)).hasMessageStartingWith("no load");
        assertThat(new NutLoad(0, 0).down()).isZero();
    }
}
