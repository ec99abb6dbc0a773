package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against the Wood Handbook (FPL-GTR-282), chapter 5 and Table 5-12. */
class GrainSlopeTest {

    @Test
    void twoSlopesOfTheHandbooksExampleMakeOneInTen() {
        // Printed as 1 in 10, so to half a unit.
        assertThat(GrainSlope.combined(12, 18)).isCloseTo(10, within(0.5));
        // Two equal slopes are steeper by the diagonal of a square.
        assertThat(GrainSlope.combined(10, 10)).isCloseTo(10 / Math.sqrt(2), within(1e-9));
        assertThat(GrainSlope.combined(12, Double.POSITIVE_INFINITY)).isCloseTo(12, within(1e-9));
    }

    @Test
    void hankinsonsRangeMeetsTable5_12WithinTwoPoints() {
        // The table is printed in whole percent and the formula is a fit to it; the largest difference is 1.4 points at
        // 1 in 15.
        for (GrainSlope.Kept row : GrainSlope.PRINTED) {
            double[] kept = GrainSlope.bendingKept(row.slope());

            assertThat(kept[0]).as("lowest at 1 in %d", row.slope()).isLessThanOrEqualTo(row.bending() + 2.0);
            assertThat(kept[1]).as("highest at 1 in %d", row.slope()).isGreaterThanOrEqualTo(row.bending() - 2.0);
            assertThat(kept[1] - kept[0]).isBetween(0.0, 3.5);
        }
    }

    @Test
    void theSteepRowsOfTable5_12LieInsideTheRange() {
        assertThat(GrainSlope.bendingKept(10)[0]).isLessThan(81);
        assertThat(GrainSlope.bendingKept(10)[1]).isGreaterThan(81);
        assertThat(GrainSlope.bendingKept(5)[0]).isLessThan(55);
        assertThat(GrainSlope.bendingKept(5)[1]).isGreaterThan(55);
    }

    @Test
    void marksWhatNoPrintedRowEncloses() {
        assertThat(GrainSlope.isExtrapolated(5)).isFalse();
        assertThat(GrainSlope.isExtrapolated(25)).isFalse();
        assertThat(GrainSlope.isExtrapolated(3.42)).isTrue();
        assertThat(GrainSlope.isExtrapolated(26)).isTrue();
    }

    @Test
    void refusesASlopeThatIsNone() {
        assertThatThrownBy(() -> GrainSlope.combined(0, 12)).hasMessageContaining("1 in more than 0");
        assertThatThrownBy(() -> GrainSlope.bendingKept(-1)).hasMessageContaining("1 in more than 0");
    }
}
