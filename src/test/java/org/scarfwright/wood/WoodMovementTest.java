package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.published.PublishedTable.number;
import static org.scarfwright.published.PublishedTable.tolerance;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.published.PublishedTable;
import org.scarfwright.wood.DimensionalChange.Coefficient;

/** Against the Wood Handbook (FPL-GTR-282), Tables 4-3 and 13-5 and the examples of chapter 13. */
class WoodMovementTest {

    @Test
    void coefficientsFollowFromShrinkageAsTable13_5FollowsFromTable4_3() {
        for (NamedCsvRecord row : PublishedTable.rows("dimensional-change.csv")) {
            Species wood = wood(row);

            assertThat(DimensionalChange.of(wood, GrainDirection.RADIAL))
                    .as(wood.id())
                    .hasValueSatisfying(c -> holds(c, row, "coefficient_radial"));
            assertThat(DimensionalChange.of(wood, GrainDirection.TANGENTIAL))
                    .as(wood.id())
                    .hasValueSatisfying(c -> holds(c, row, "coefficient_tangential"));
        }
    }

    /**
     * Where the tables follow from one another there is one figure, and it is the printed one to one unit of its last digit,
     * since both are rounded (sycamore's 8.4 % gives 0.00297 and is printed 0.00296); else the upper figure is the printed one.
     */
    private static void holds(Coefficient coefficient, NamedCsvRecord row, String column) {
        assertThat(coefficient.high())
                .isCloseTo(new BigDecimal(row.getField(column)), within(new BigDecimal("0.00001")));
        if (row.getField("note").isEmpty()) {
            assertThat(coefficient.isRange()).isFalse();
        }
    }

    @Test
    void hardMapleAndWalnutAreMetToTheLastDigit() {
        assertThat(DimensionalChange.coefficient(9.9)).isEqualByComparingTo("0.00353");
        assertThat(DimensionalChange.coefficient(4.8)).isEqualByComparingTo("0.00165");
        assertThat(DimensionalChange.coefficient(5.5)).isEqualByComparingTo("0.00190");
    }

    @Test
    void woodsWhoseTablesDifferShowARange() {
        long noted = 0;
        for (NamedCsvRecord row : PublishedTable.rows("dimensional-change.csv")) {
            if (!row.getField("note").isEmpty()) {
                assertThat(DimensionalChange.differs(row.getField("id"))).isTrue();
                assertThat(DimensionalChange.of(wood(row), GrainDirection.TANGENTIAL))
                        .hasValueSatisfying(c -> assertThat(c.isRange()).isTrue());
                noted++;
            }
        }
        assertThat(noted).isEqualTo(2);
        assertThat(DimensionalChange.differs("maple_sugar")).isFalse();
    }

    @Test
    void trueMahoganyShowsARangeOfSeventyPercent() {
        Species mahogany = Woods.shrinking("mahogany_true", 3.0, 4.1);

        assertThat(DimensionalChange.of(mahogany, GrainDirection.TANGENTIAL)).hasValueSatisfying(c -> {
            assertThat(c.low()).isEqualByComparingTo("0.00141");
            assertThat(c.high()).isEqualByComparingTo("0.00238");
            assertThat(c.high().doubleValue() / c.low().doubleValue()).isCloseTo(1.7, within(0.02));
        });
        assertThat(DimensionalChange.of(mahogany, GrainDirection.RADIAL))
                .hasValueSatisfying(c -> assertThat(c.high()).isEqualByComparingTo("0.00172"));
    }

    @Test
    void inventsNoCoefficient() {
        assertThat(DimensionalChange.of(Woods.shrinking("wenge", null, 5.8), GrainDirection.RADIAL))
                .isEmpty();
        assertThat(DimensionalChange.of(Woods.shrinking("wenge", null, 5.8), GrainDirection.TANGENTIAL))
                .isPresent();
    }

    @Test
    void movesAsTheExamplesDo() {
        for (NamedCsvRecord row : PublishedTable.rows("movement.csv")) {
            LengthUnit unit = row.getField("unit").equals("in") ? LengthUnit.INCH : LengthUnit.MM;
            Length moved = DimensionalChange.movement(
                    LengthParser.parse(row.getField("size"), unit),
                    new BigDecimal(row.getField("coefficient")),
                    percent(row.getField("from_pct")),
                    percent(row.getField("to_pct")));

            assertThat(moved.um() / (double) unit.um())
                    .as(row.getField("what"))
                    .isCloseTo(number(row, "change"), tolerance(row, "change"));
        }
    }

    @Test
    void refusesMoistureWhereTheRuleDoesNotHold() {
        BigDecimal maple = new BigDecimal("0.00353");
        assertThatThrownBy(() -> DimensionalChange.movement(Length.ofMm(60), maple, percent("5"), percent("8")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("is 5 %; the rule holds from 6 % to 14 %, for example 8");
        assertThatThrownBy(() -> DimensionalChange.movement(Length.ofMm(60), maple, percent("8"), percent("15")))
                .hasMessageStartingWith("is 15 %");
        assertThat(DimensionalChange.moistureRefusal(percent("6"))).isEmpty();
        assertThat(DimensionalChange.moistureRefusal(percent("14"))).isEmpty();
        assertThat(DimensionalChange.moistureRefusal(new Moisture(599))).isPresent();
        assertThat(DimensionalChange.moistureRefusal(new Moisture(1401))).isPresent();
    }

    @Test
    void refusesAShrinkageThatIsNone() {
        assertThatThrownBy(() -> DimensionalChange.coefficient(0)).hasMessageContaining("not a total shrinkage");
        assertThatThrownBy(() -> DimensionalChange.coefficient(50)).hasMessageContaining("not a total shrinkage");
        assertThat(DimensionalChange.coefficient(49.9)).isPositive();
    }

    private static Species wood(NamedCsvRecord row) {
        return Woods.shrinking(
                row.getField("id"), number(row, "shrink_radial_pct"), number(row, "shrink_tangential_pct"));
    }

    private static Moisture percent(String percent) {
        return Moisture.ofPercent(new BigDecimal(percent));
    }
}
