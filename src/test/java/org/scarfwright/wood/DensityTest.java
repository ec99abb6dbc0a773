package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
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
import org.scarfwright.measure.Volume;
import org.scarfwright.published.PublishedTable;

/** Against the Wood Handbook (FPL-GTR-282), equation 4-14 and Table 5-3, and the definition of the board foot. */
class DensityTest {
    private static final Moisture TWELVE = new Moisture(1200);
    private static final Moisture GREEN = new Moisture(3000);

    @Test
    void densityCountsTheWater() {
        for (NamedCsvRecord row : PublishedTable.rows("density.csv")) {
            assertThat(Density.kgPerCubicMetre(
                            number(row, "specific_gravity"), Moisture.ofPercent(number(row, "moisture_pct"))))
                    .isCloseTo(number(row, "kg_per_m3"), tolerance(row, "kg_per_m3"));
        }
    }

    @Test
    void theGreenFigureComesToThePrintedOneAtTwelvePercentAndBack() {
        for (NamedCsvRecord row : PublishedTable.rows("specific-gravity.csv")) {
            double green = number(row, "green");
            double atTwelve = number(row, "at_12");
            double shrinkage = number(row, "shrink_volumetric_pct");

            assertThat(Density.specificGravityAt(Woods.weighing(green, Species.GREEN, shrinkage), TWELVE))
                    .as(row.getField("id"))
                    .hasValueSatisfying(g -> assertThat(g).isCloseTo(atTwelve, within(0.02)));
            assertThat(Density.specificGravityAt(Woods.weighing(atTwelve, Species.AT_TWELVE, shrinkage), GREEN))
                    .as(row.getField("id"))
                    .hasValueSatisfying(g -> assertThat(g).isCloseTo(green, within(0.02)));
        }
    }

    @Test
    void theWoodItselfIsTheSameAtEveryMoisture() {
        // Walnut: what 1 cm³ of green wood holds of dry wood, it still holds when it has shrunk.
        Species wood = Woods.weighing(0.51, Species.GREEN, 12.8);
        for (int percent = 0; percent <= 30; percent++) {
            double gravity =
                    Density.specificGravityAt(wood, new Moisture(percent * 100)).orElseThrow();

            assertThat(gravity * (1 - 0.128 * (30 - percent) / 30)).isCloseTo(0.51, within(1e-12));
        }
    }

    @Test
    void aFigureAtItsOwnBasisNeedsNoShrinkage() {
        assertThat(Density.of(Woods.weighing(0.63, Species.AT_TWELVE, null), TWELVE))
                .hasValueSatisfying(d -> assertThat(d).isCloseTo(705.6, within(1e-9)));
        assertThat(Density.of(Woods.weighing(0.67, Species.GREEN, null), GREEN))
                .hasValueSatisfying(d -> assertThat(d).isCloseTo(871, within(1e-9)));
        assertThat(Density.of(Woods.weighing(0.67, Species.GREEN, null), TWELVE))
                .isEmpty();
        assertThat(Density.of(Woods.weighing(0.63, Species.AT_TWELVE, null), new Moisture(800)))
                .isEmpty();
    }

    @Test
    void inventsNoWeight() {
        assertThat(Density.of(Woods.weighing(null, null, 12.8), TWELVE)).isEmpty();
        assertThat(Density.of(Woods.weighing(0.51, Species.GREEN, 12.8), new Moisture(3001)))
                .isEmpty();
    }

    @Test
    void aBlankWeighsItsVolumeTimesItsDensity() {
        // 640 × 80 × 25 mm is 1.28 litres; at 705.6 g a litre 903.2 g.
        Volume blank = Volume.of(Length.ofMm(640), Length.ofMm(80), Length.ofMm(25));

        assertThat(Density.grams(705.6, blank)).isEqualTo("903");
        assertThat(Density.grams(Woods.weighing(0.63, Species.AT_TWELVE, null), TWELVE, blank))
                .contains(new BigDecimal("903"));
        assertThat(Density.grams(Woods.weighing(null, null, null), TWELVE, blank))
                .isEmpty();
    }

    @Test
    void boardFeetFollowTheDefinition() {
        for (NamedCsvRecord row : PublishedTable.rows("board-foot.csv")) {
            Volume board = Volume.of(inches(row, "length_in"), inches(row, "width_in"), inches(row, "thickness_in"));

            assertThat(BoardFeet.of(board)).isEqualTo(row.getField("board_feet"));
        }
        // 2.3597 litres, to the digits given.
        assertThat(BoardFeet.of(new Volume(new BigDecimal("2359700000000000").toBigInteger())))
                .isEqualTo("1.00");
    }

    private static Length inches(NamedCsvRecord row, String column) {
        return LengthParser.parse(row.getField(column) + " in", LengthUnit.INCH);
    }
}
