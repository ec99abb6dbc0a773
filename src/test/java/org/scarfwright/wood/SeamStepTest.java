package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Moisture;
import org.scarfwright.wood.DimensionalChange.Coefficient;
import org.scarfwright.wood.SeamStep.Year;

/** Movement by Wood Handbook (FPL-GTR-282), chapter 13, with coefficients of its Table 13-5. */
class SeamStepTest {
    private static final Coefficient FLAT_MAPLE = alike("0.00353");
    private static final Coefficient QUARTER_WALNUT = alike("0.00190");
    private static final Year YEAR = new Year(new Moisture(700), new Moisture(1000));

    @Test
    void halfOfWhatOneMovesMoreShowsAtEachEdge() {
        // 60 mm over 3 points: maple 0.6354 mm, walnut 0.3420 mm; half of 0.2934 mm at each edge.
        SeamStep step = SeamStep.of(FLAT_MAPLE, QUARTER_WALNUT, Length.ofMm(60), YEAR);

        assertThat(step.most()).isEqualTo(Length.ofUm(147));
        assertThat(step.least()).isEqualTo(step.most());
        assertThat(SeamStep.of(QUARTER_WALNUT, FLAT_MAPLE, Length.ofMm(60), YEAR))
                .isEqualTo(step);
    }

    @Test
    void oneWoodMakesNoStepWithItself() {
        assertThat(SeamStep.of(FLAT_MAPLE, FLAT_MAPLE, Length.ofMm(60), YEAR))
                .isEqualTo(new SeamStep(Length.ZERO, Length.ZERO));
    }

    @Test
    void aRangeOfFiguresGivesARangeOfSteps() {
        // True mahogany, tangential 0.00141 to 0.00238: over 100 mm and 3 points.
        Coefficient mahogany = new Coefficient(new BigDecimal("0.00141"), new BigDecimal("0.00238"));

        assertThat(SeamStep.of(mahogany, FLAT_MAPLE, Length.ofMm(100), YEAR))
                .isEqualTo(new SeamStep(Length.ofUm(173), Length.ofUm(318)));
        assertThat(SeamStep.of(FLAT_MAPLE, mahogany, Length.ofMm(100), YEAR))
                .isEqualTo(new SeamStep(Length.ofUm(173), Length.ofUm(318)));
        // Walnut lies inside the range: perhaps no step at all.
        assertThat(SeamStep.of(mahogany, QUARTER_WALNUT, Length.ofMm(100), YEAR))
                .isEqualTo(new SeamStep(Length.ZERO, Length.ofUm(74)));
        assertThat(SeamStep.of(QUARTER_WALNUT, mahogany, Length.ofMm(100), YEAR).least())
                .isEqualTo(Length.ZERO);
    }

    @Test
    void refusesAYearTheRuleDoesNotHoldFor() {
        assertThatThrownBy(() -> SeamStep.of(
                        FLAT_MAPLE, QUARTER_WALNUT, Length.ofMm(60), new Year(new Moisture(500), new Moisture(900))))
                .hasMessageStartingWith("is 5 %; the rule holds from 6 % to 14 %");
        assertThatThrownBy(() -> new Year(new Moisture(900), new Moisture(899)))
                .hasMessage("the highest, 8.99 %, is below the lowest, 9 %");
        assertThat(new Year(new Moisture(900), new Moisture(900)).change().hundredths())
                .isZero();
    }

    private static Coefficient alike(String value) {
        return new Coefficient(new BigDecimal(value), new BigDecimal(value));
    }
}
