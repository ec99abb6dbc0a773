package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.rack.TestPieces.mm;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;

/** Worked by hand, and against a piece whose ends are really turned in space. */
class WindingSticksTest {
    @Test
    void showWhatTheWorkedExamplesSay() {
        for (String[] row : PublishedRack.rows("rack-winding-sticks.csv")) {
            Length twist = new WindingSticks(mm(row[4]), mm(row[2]), mm(row[3])).twist(mm(row[0]), mm(row[1]));
            assertThat(twist.mm()).as(String.join(",", row)).isCloseTo(Double.parseDouble(row[5]), within(0.006));
        }
    }

    @Test
    void agreeWithTheFourthCornerOfAPieceThatIsTurned() {
        Random random = new Random(20_261_201);
        for (int i = 0; i < 500; i++) {
            double length = 200 + random.nextInt(1000);
            double width = 30 + random.nextInt(120);
            double stick = 100 + random.nextInt(600);
            double turn = random.nextDouble() * 0.1; // radians, end to end
            double in = random.nextDouble() * 0.3 * length;
            double distance = length - 2 * in;
            // Far stick turned against the near one; both laid through the middle of the width, near ends in line.
            double gap = stick * Math.sin(turn * distance / length);
            // Three corners down: the far end's two corners differ in height by this, the near end's do not.
            double corner = width * Math.sin(turn);
            double read = new WindingSticks(Length.nearestMm(gap), Length.nearestMm(stick), Length.nearestMm(distance))
                    .twist(Length.nearestMm(length), Length.nearestMm(width))
                    .mm();
            assertThat(read).isCloseTo(corner, within(0.01 + 0.002 * corner));
        }
    }

    @Test
    void roundUpWhatAPieceIsOut() {
        assertThat(new WindingSticks(mm("1"), mm("300"), mm("700")).twist(mm("700"), mm("80")))
                .isEqualTo(Length.ofUm(267)); // 0.26666…
    }
}
