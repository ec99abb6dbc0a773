package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.rack.TestPieces.mm;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.rack.MoistureReading.Meter;
import org.scarfwright.rack.ReadingHistory.Row;
import org.scarfwright.rack.ReadingHistory.Span;
import org.scarfwright.rack.ReadingHistory.WarpChange;

class ReadingHistoryTest {
    private static final LocalDate MARCH = LocalDate.of(2026, 3, 2);
    private static final LocalDate MAY = LocalDate.of(2026, 5, 4);
    private static final LocalDate JULY = LocalDate.of(2026, 7, 1);

    private static Warp warp(String bow, String twist, LocalDate day) {
        return new Warp(mm(bow), mm("0.5"), mm("0"), mm(twist), day);
    }

    private static MoistureReading moisture(int hundredths, LocalDate day) {
        return new MoistureReading(new Moisture(hundredths), day, Meter.PIN);
    }

    @Test
    void runsFromTheFirstDayToTheLastWithWhatChanged() {
        Warp first = warp("1", "3", MARCH);
        Warp last = warp("3.5", "2", JULY);
        MoistureReading wet = moisture(950, MARCH);
        MoistureReading between = moisture(880, MAY);
        MoistureReading dry = moisture(800, JULY);
        List<Row> rows = ReadingHistory.of(List.of(last, first), List.of(dry, between, wet));
        WarpChange change = new WarpChange(mm("2.5"), mm("0"), mm("0"), mm("-1"));

        assertThat(rows)
                .containsExactly(
                        new Row(MARCH, first, wet, null, null),
                        new Row(MAY, null, between, new MoistureChange(-70), null),
                        new Row(JULY, last, dry, new MoistureChange(-80), change));
        assertThat(ReadingHistory.spans(rows))
                .containsExactly(new Span(rows.get(0), rows.get(2), new MoistureChange(-150), change));
    }

    @Test
    void readingsOfOneDayStayInTheOrderTheyWereWritten() {
        Warp first = warp("1", "0", MARCH);
        Warp second = warp("2", "0", MARCH);
        List<Row> rows = ReadingHistory.of(
                List.of(second, first), List.of(moisture(810, MARCH), moisture(800, MARCH), moisture(790, MARCH)));
        assertThat(rows).extracting(Row::warp).containsExactly(first, second, null);
        assertThat(rows)
                .extracting(r -> Objects.requireNonNull(r.moisture()).content().hundredths())
                .containsExactly(790, 800, 810);
        assertThat(rows)
                .extracting(Row::moistureChange)
                .containsExactly(null, new MoistureChange(10), new MoistureChange(10));
    }

    @Test
    void changeSkipsDaysOnWhichTheOtherWasRead() {
        Warp first = warp("1", "0", MARCH);
        Warp last = warp("2", "0", JULY);
        List<Row> rows = ReadingHistory.of(List.of(last, first), List.of(moisture(800, MAY)));
        assertThat(Objects.requireNonNull(rows.get(2).warpChange()).bow()).isEqualTo(mm("1"));
        assertThat(rows.get(1).moistureChange()).isNull();
        assertThat(ReadingHistory.spans(rows)).isEmpty();
        assertThat(ReadingHistory.of(List.of(), List.of())).isEmpty();
    }
}
