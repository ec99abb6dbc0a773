package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;

/** Against the Wood Handbook (FPL-GTR-282), Tables 4-3 and 13-5 and the example of chapter 13. */
class WoodMovementTest {

    @Test
    void coefficientOfHardMapleIsTheOneOfTable13_5() {
        // Table 4-3: tangential 9.9 %, radial 4.8 %. Table 13-5: 0.00353 and 0.00165.
        assertThat(DimensionalChange.coefficient(9.9)).isEqualByComparingTo("0.00353");
        assertThat(DimensionalChange.coefficient(4.8)).isEqualByComparingTo("0.00165");
    }

    @Test
    void coefficientOfWalnutQuarterSawnIsTheOneOfTable13_5() {
        assertThat(DimensionalChange.coefficient(5.5)).isEqualByComparingTo("0.00190");
    }

    @Test
    void theHandbooksExampleMovesNineteenThousandthsOfAnInch() {
        // Chapter 13: 5 in × 0.00129 × 3 points = 0.019 in, printed to 0.001 in.
        Length size = LengthParser.parse("5 in", LengthUnit.INCH);
        Length moved = DimensionalChange.movement(size, new BigDecimal("0.00129"), percent(8), percent(11));

        assertThat(moved.mm() / 25.4).isCloseTo(0.019, within(0.0005));
    }

    @Test
    void dryingShrinksFlatSawnMapleAndQuarterSawnWalnut() {
        // Worked with the coefficients of Table 13-5: 60 mm from 10 to 7 %.
        assertThat(DimensionalChange.movement(
                        Length.ofMm(60), DimensionalChange.coefficient(9.9), percent(10), percent(7)))
                .isEqualTo(Length.ofUm(-635));
        assertThat(DimensionalChange.movement(
                        Length.ofMm(60), DimensionalChange.coefficient(5.5), percent(10), percent(7)))
                .isEqualTo(Length.ofUm(-342));
    }

    @Test
    void refusesMoistureWhereTheRuleDoesNotHold() {
        assertThatThrownBy(() ->
                        DimensionalChange.movement(Length.ofMm(60), new BigDecimal("0.00353"), percent(5), percent(8)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("is 5 %; the rule holds from 6 % to 14 %, for example 8");
        assertThatThrownBy(() ->
                        DimensionalChange.movement(Length.ofMm(60), new BigDecimal("0.00353"), percent(8), percent(15)))
                .hasMessageStartingWith("is 15 %");
        assertThat(DimensionalChange.moistureRefusal(percent(6))).isEmpty();
        assertThat(DimensionalChange.moistureRefusal(percent(14))).isEmpty();
        assertThatThrownBy(() -> DimensionalChange.coefficient(0)).hasMessageContaining("not a total shrinkage");
    }

    @Test
    void showsARangeWherePublishedFiguresDiffer() {
        assertThat(DimensionalChange.of(wood("mahogany_true", 3.0, 4.1), GrainDirection.TANGENTIAL))
                .hasValueSatisfying(c -> {
                    assertThat(c.isRange()).isTrue();
                    assertThat(c.high().doubleValue() / c.low().doubleValue()).isCloseTo(1.7, within(0.02));
                });
        assertThat(DimensionalChange.of(wood("maple_sugar", 4.8, 9.9), GrainDirection.RADIAL))
                .hasValueSatisfying(c -> assertThat(c.isRange()).isFalse());
        assertThat(DimensionalChange.of(wood("wenge", null, 5.8), GrainDirection.RADIAL))
                .isEmpty();
    }

    @Test
    void densityCountsTheWater() {
        // Wood Handbook, equation 4-14: G 0.63 at 12 % gives 1000 × 0.63 × 1.12 = 705.6 kg/m³.
        assertThat(Density.kgPerCubicMetre(0.63, percent(12))).isCloseTo(705.6, within(1e-9));
    }

    private static Moisture percent(int percent) {
        return Moisture.ofPercent(BigDecimal.valueOf(percent));
    }

    private static Species wood(String id, @Nullable Double radial, @Nullable Double tangential) {
        return new Species(
                id, id, id, null, null, null, null, null, radial, tangential, null, null, "none", "none", null);
    }
}
