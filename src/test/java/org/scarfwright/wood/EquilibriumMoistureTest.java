package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Against the table of equilibrium moisture content in the Wood Handbook (FPL-GTR-282), chapter 4. */
class EquilibriumMoistureTest {
    /**
     * The table is printed to 0.1 point, so a figure that agrees lies within half of that. The constants of the equation are
     * themselves rounded to three digits, for which 0.0025 is added; the largest difference of the cells is 0.052.
     */
    private static final double HALF_A_PRINTED_DIGIT = 0.05 + 0.0025;

    @Test
    void everyPrintedCellIsMet() throws IOException {
        List<NamedCsvRecord> cells = printed();

        assertThat(cells).hasSize(70);
        for (NamedCsvRecord cell : cells) {
            BigDecimal fahrenheit = new BigDecimal(cell.getField("temp_F"));
            BigDecimal celsius =
                    fahrenheit.subtract(BigDecimal.valueOf(32)).divide(new BigDecimal("1.8"), MathContext.DECIMAL64);
            BigDecimal humidity = new BigDecimal(cell.getField("relative_humidity_pct"));

            assertThat(EquilibriumMoisture.percent(celsius, humidity))
                    .as("%s °F, %s %%", fahrenheit, humidity)
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

    private static List<NamedCsvRecord> printed() throws IOException {
        try (Reader in = new InputStreamReader(
                        Objects.requireNonNull(
                                EquilibriumMoistureTest.class.getResourceAsStream("/published/emc-table.csv")),
                        StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder()
                        .commentStrategy(CommentStrategy.SKIP)
                        .ofNamedCsvRecord(in)) {
            return csv.stream().toList();
        }
    }
}
