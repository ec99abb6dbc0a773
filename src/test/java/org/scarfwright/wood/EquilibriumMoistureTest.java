package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Moisture;
import org.scarfwright.published.PublishedTable;

/** Against the table of equilibrium moisture content in the Wood Handbook (FPL-GTR-282), chapter 4. */
class EquilibriumMoistureTest {
    /**
     * The table is printed to 0.1 point, so a figure that agrees lies within half of that. The constants of the equation are
     * themselves rounded to three digits, for which 0.0025 is added; the largest difference of the cells is 0.052.
     */
    private static final double HALF_A_PRINTED_DIGIT = 0.05 + 0.0025;

    @Test
    void everyPrintedCellIsMet() {
        List<NamedCsvRecord> cells = PublishedTable.rows("emc-table.csv");

        assertThat(cells).hasSize(70);
        for (NamedCsvRecord cell : cells) {
            BigDecimal humidity = new BigDecimal(cell.getField("relative_humidity_pct"));

            assertThat(EquilibriumMoisture.percent(celsius(cell), humidity))
                    .as("%s °F, %s %%", cell.getField("temp_F"), humidity)
                    .isCloseTo(Double.parseDouble(cell.getField("emc_pct")), within(HALF_A_PRINTED_DIGIT));
        }
    }

    @Test
    void refusesAirOutsideThePublishedRange() {
        assertThat(EquilibriumMoisture.temperatureRefusal(new BigDecimal("54.5")))
                .contains("is 54.5 °C; the published figures reach from -1.1 to 54.4 °C, for example 21.1");
        assertThat(EquilibriumMoisture.humidityRefusal(new BigDecimal("100")))
                .contains("is 100 %; the published figures reach from 5 to 90 %, for example 65");
        assertThat(EquilibriumMoisture.temperatureRefusal(new BigDecimal("-1.1")))
                .isEmpty();
        assertThat(EquilibriumMoisture.humidityRefusal(new BigDecimal("90.0"))).isEmpty();
        assertThatThrownBy(() -> EquilibriumMoisture.percent(new BigDecimal("21"), new BigDecimal("4.9")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("is 4.9 %");
        assertThatThrownBy(() -> EquilibriumMoisture.percent(new BigDecimal("-2"), new BigDecimal("50")))
                .hasMessageStartingWith("is -2 °C");
    }

    @Test
    void theHumidityThatKeepsAPrintedMoistureIsThePrintedOne() {
        // A printed moisture is good to half a digit; the printed cells beside it tell how far the humidity may move
        // for that.
        List<NamedCsvRecord> cells = PublishedTable.rows("emc-table.csv");
        int compared = 0;
        for (NamedCsvRecord cell : cells) {
            double emc = PublishedTable.number(cell, "emc_pct");
            double humidity = PublishedTable.number(cell, "relative_humidity_pct");
            if (EquilibriumMoisture.contentRefusal(celsius(cell), Moisture.ofPercent(emc))
                    .isPresent()) {
                // At 5 and 90 % a printed figure may be rounded out of the range.
                assertThat(humidity).isIn(5.0, 90.0);
                continue;
            }
            double perPoint = cells.stream()
                    .filter(c -> c.getField("temp_F").equals(cell.getField("temp_F")))
                    .filter(c -> Math.abs(PublishedTable.number(c, "relative_humidity_pct") - humidity) == 5)
                    .mapToDouble(c -> 5 / Math.abs(PublishedTable.number(c, "emc_pct") - emc))
                    .max()
                    .orElseThrow();
            assertThat(EquilibriumMoisture.humidityKeeping(celsius(cell), Moisture.ofPercent(emc)))
                    .as("%s °F, %s %%", cell.getField("temp_F"), emc)
                    .isCloseTo(humidity, within(HALF_A_PRINTED_DIGIT * perPoint * 1.1));
            compared++;
        }
        assertThat(compared).isGreaterThan(60);
    }

    @Test
    void theHumidityThatIsFoundBringsWoodToTheMoistureThatWasAsked() {
        for (String celsius : List.of("-1.1", "0", "20", "35.5", "54.4")) {
            for (int percent = 2; percent <= 15; percent++) {
                double humidity =
                        EquilibriumMoisture.humidityKeeping(new BigDecimal(celsius), new Moisture(percent * 100));

                assertThat(EquilibriumMoisture.percent(new BigDecimal(celsius), BigDecimal.valueOf(humidity)))
                        .isCloseTo(percent, within(1e-9));
            }
        }
    }

    @Test
    void keepsSevenPercentAtTwentyDegreesWithThirtySixPercentHumidity() {
        // The printed table: 70 °F (21.1 °C) gives 6.9 % at 35 % and 7.7 % at 40 %.
        assertThat(EquilibriumMoisture.humidityKeeping(new BigDecimal("21.1"), new Moisture(700)))
                .isBetween(35.0, 36.5);
    }

    @Test
    void tellsWhichMoistureAirCanKeep() {
        assertThat(EquilibriumMoisture.contentRefusal(new BigDecimal("21.1"), new Moisture(2500)))
                .contains(
                        "is 25 %; at 21.1 °C air of 5 to 90 % relative humidity keeps wood at 1.3 to 20.5 %, for example 7");
        assertThat(EquilibriumMoisture.contentRefusal(new BigDecimal("21.1"), new Moisture(50)))
                .hasValueSatisfying(reason -> assertThat(reason).startsWith("is 0.5 %; at 21.1 °C"));
        assertThat(EquilibriumMoisture.contentRefusal(new BigDecimal("21.1"), new Moisture(2000)))
                .isEmpty();
        assertThatThrownBy(() -> EquilibriumMoisture.humidityKeeping(new BigDecimal("20"), new Moisture(2600)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("is 26 %; at 20 °C");
        assertThatThrownBy(() -> EquilibriumMoisture.humidityKeeping(new BigDecimal("60"), new Moisture(700)))
                .hasMessageStartingWith("is 60 °C");
    }

    @Test
    void asAMoistureIsRoundedToAHundredth() {
        assertThat(EquilibriumMoisture.of(new BigDecimal("21.1"), new BigDecimal("65")))
                .isEqualTo(Moisture.ofPercent(new BigDecimal("11.96")));
    }

    private static BigDecimal celsius(NamedCsvRecord cell) {
        return new BigDecimal(cell.getField("temp_F"))
                .subtract(BigDecimal.valueOf(32))
                .divide(new BigDecimal("1.8"), MathContext.DECIMAL64);
    }
}
