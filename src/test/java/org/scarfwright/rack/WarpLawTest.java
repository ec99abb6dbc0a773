package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.rack.TestPieces.mm;

import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;

/** Worked by hand from the two bends that two readings fix; {@link WarpedBoardTest} holds them to lines that are really bent. */
class WarpLawTest {
    @Test
    void leavesWhatTheWorkedExamplesSay() {
        for (String[] row : PublishedRack.rows("rack-middle-reading.csv")) {
            double share = Double.parseDouble(row[3]) / Double.parseDouble(row[0]);
            assertThat(WarpLaw.rise(mm(row[1]), mm(row[2]), share))
                    .as(String.join(",", row))
                    .isCloseTo(Double.parseDouble(row[4]), within(0.0005)); // half a printed digit
        }
    }

    @Test
    void withoutASecondReadingThereIsOneArc() {
        assertThat(WarpLaw.rise(mm("6"), null, 0.5)).isEqualTo(1.5);
        assertThat(WarpLaw.rise(mm("6"), null, 1)).isEqualTo(6);
        assertThat(WarpLaw.twist(mm("5"), null, 0.5)).isEqualTo(2.5);
        assertThat(WarpLaw.asEvenRise(mm("6"), null)).isEqualTo(mm("6"));
        assertThat(WarpLaw.asEvenTwist(mm("5"), null)).isEqualTo(mm("5"));
    }

    @Test
    void neverTakesLessThanOneReadingWould() {
        for (int m = 0; m <= 60; m++) {
            for (int s = 0; s <= 20; s++) {
                double share = s / 20.0;
                Length middle = Length.ofUm(m * 100L);
                assertThat(WarpLaw.rise(mm("6"), middle, share))
                        .isGreaterThanOrEqualTo(WarpLaw.rise(mm("6"), null, share) - 1e-12);
                assertThat(WarpLaw.twist(mm("6"), middle, share))
                        .isGreaterThanOrEqualTo(WarpLaw.twist(mm("6"), null, share) - 1e-12);
            }
        }
    }

    @Test
    void growsWithTheLengthOfThePart() {
        for (String middle : new String[] {"0", "1", "1.5", "2", "3", "4", "6"}) {
            for (int s = 1; s <= 40; s++) {
                assertThat(WarpLaw.rise(mm("6"), mm(middle), s / 40.0))
                        .isGreaterThanOrEqualTo(WarpLaw.rise(mm("6"), mm(middle), (s - 1) / 40.0));
                assertThat(WarpLaw.twist(mm("6"), mm(middle), s / 40.0))
                        .isGreaterThanOrEqualTo(WarpLaw.twist(mm("6"), mm(middle), (s - 1) / 40.0));
            }
        }
    }

    @Test
    void twistCountsByItsTighterPlaceAndNeverMoreThanTheWhole() {
        // even: 6 over the whole, 3 over the middle half
        assertThat(WarpLaw.twist(mm("6"), mm("3"), 0.25)).isEqualTo(1.5);
        // tighter in the middle: 2·5
        assertThat(WarpLaw.twist(mm("6"), mm("5"), 0.25)).isEqualTo(2.5);
        assertThat(WarpLaw.twist(mm("6"), mm("5"), 0.8)).isEqualTo(6);
        // tighter toward the ends: 2·(6 − 1)
        assertThat(WarpLaw.twist(mm("6"), mm("1"), 0.25)).isEqualTo(2.5);
        // runs back toward the ends: the middle alone has 8
        assertThat(WarpLaw.twist(mm("6"), mm("8"), 1)).isEqualTo(8);
        assertThat(WarpLaw.twist(mm("6"), mm("8"), 0.25)).isEqualTo(4);
    }

    @Test
    void tellsWhichEvenPieceIsAsBadAsThisOneIsWhereItIsWorst() {
        assertThat(WarpLaw.asEvenRise(mm("6"), mm("1.5"))).isEqualTo(mm("6"));
        assertThat(WarpLaw.asEvenRise(mm("6"), mm("2.4"))).isEqualTo(mm("9.6"));
        assertThat(WarpLaw.asEvenRise(mm("6"), mm("1"))).isEqualTo(mm("12"));
        assertThat(WarpLaw.asEvenRise(mm("6"), mm("4"))).isEqualTo(mm("16"));
        assertThat(WarpLaw.asEvenTwist(mm("5"), mm("2.5"))).isEqualTo(mm("5"));
        assertThat(WarpLaw.asEvenTwist(mm("5"), mm("1"))).isEqualTo(mm("8"));
        assertThat(WarpLaw.asEvenTwist(mm("5"), mm("7"))).isEqualTo(mm("14"));
    }
}
