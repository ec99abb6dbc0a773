package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scarfwright.published.PublishedTable.number;
import static org.scarfwright.published.PublishedTable.tolerance;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.published.PublishedTable;

/** Against strings and exercises of physics texts. */
class StringTensionTest {
    @Test
    void pullsAsThePrintedExamplesDo() {
        for (NamedCsvRecord row : PublishedTable.rows("string-tension.csv")) {
            Length length = Length.ofMm(new BigDecimal(row.getField("length_m")).movePointRight(3));

            assertThat(StringTension.newtons(number(row, "mass_kg_per_m") * 1000, length, number(row, "hertz")))
                    .as(row.getField("what"))
                    .isCloseTo(number(row, "newtons"), tolerance(row, "newtons"));
        }
    }

    @Test
    void refusesWhatIsNoString() {
        assertThatThrownBy(() -> StringTension.newtons(0, Length.ofMm(648), 330))
                .hasMessageStartingWith("no string");
        assertThatThrownBy(() -> StringTension.newtons(0.3, Length.ZERO, 330)).hasMessageStartingWith("no string");
        assertThatThrownBy(() -> StringTension.newtons(0.3, Length.ofMm(648), 0))
                .hasMessageStartingWith("no string");
    }
}
