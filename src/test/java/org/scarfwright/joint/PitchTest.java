package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.published.PublishedTable.number;
import static org.scarfwright.published.PublishedTable.tolerance;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.published.PublishedTable;

/** Against frequencies of equal temperament as commonly printed, A4 = 440 Hz (ISO 16). */
class PitchTest {
    @Test
    void notesHaveTheirPrintedFrequencies() {
        for (NamedCsvRecord row : PublishedTable.rows("pitch.csv")) {
            Pitch pitch = Pitch.parse(row.getField("note"));

            assertThat(pitch.hertz()).as(pitch.name()).isCloseTo(number(row, "hertz"), tolerance(row, "hertz"));
            assertThat(pitch.name()).isEqualTo(row.getField("note"));
        }
    }

    @Test
    void readsNotesHoweverTheyAreWritten() {
        assertThat(Pitch.parse(" e4 ").name()).isEqualTo("E4");
        assertThat(Pitch.parse("B♭3").hertz()).isEqualTo(Pitch.parse("A#3").hertz());
        assertThat(Pitch.parse("F♯4").hertz()).isEqualTo(Pitch.parse("Gb4").hertz());
        assertThat(Pitch.parse("b3").hertz()).isCloseTo(246.94, within(0.005));
        assertThat(Pitch.parse("Cb4").hertz()).isCloseTo(Pitch.parse("B3").hertz(), within(1e-9));
    }

    @Test
    void readsFrequencies() {
        assertThat(Pitch.parse("329,63 Hz")).isEqualTo(new Pitch("329.63 Hz", 329.63));
        assertThat(Pitch.parse("440")).isEqualTo(new Pitch("440 Hz", 440));
        assertThat(Pitch.parse("8").hertz()).isEqualTo(8);
        assertThat(Pitch.parse("5000hz").hertz()).isEqualTo(5000);
    }

    @Test
    void refusesWhatIsNoPitch() {
        for (String text : new String[] {"H4", "E", "E44", "E##4", "", "-1", "1e3", "x".repeat(1000)}) {
            assertThatThrownBy(() -> Pitch.parse(text))
                    .isInstanceOf(MeasureFormatException.class)
                    .hasMessageEndingWith("is no pitch; write a note such as E4 or F#3, or 329.63 Hz");
        }
        assertThatThrownBy(() -> Pitch.parse("x".repeat(1000))).hasMessageStartingWith("“" + "x".repeat(40) + "…”");
        assertThatThrownBy(() -> Pitch.parse("x".repeat(40))).hasMessageStartingWith("“" + "x".repeat(40) + "”");
        assertThatThrownBy(() -> Pitch.parse("7.99"))
                .hasMessage("“7.99” is not between 8 and 5000 Hz; write for example E4");
        assertThatThrownBy(() -> Pitch.parse("5000.1")).hasMessageContaining("is not between 8 and 5000 Hz");
        assertThatThrownBy(() -> Pitch.parse("E9")).hasMessageContaining("is not between 8 and 5000 Hz");
    }
}
