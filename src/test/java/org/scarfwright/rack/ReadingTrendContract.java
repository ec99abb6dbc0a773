package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.common.math.Quantiles;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.ReadingTrend.Measure;
import org.scarfwright.rack.ReadingTrend.Month;
import org.scarfwright.rack.ReadingTrend.Question;
import org.scarfwright.rack.ReadingTrend.Reading;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/** Months of readings, against the readings as they were entered and the median of Guava, a general library. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class ReadingTrendContract {
    private static final Random RANDOM = new Random(126);

    @Autowired
    ReadingTrend trend;

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    private final List<Reading> moisture = new ArrayList<>();
    private final List<Reading> bow = new ArrayList<>();

    private void piece(String code, String wood, String lot) {
        PieceCells cells = new PieceCells()
                .put(PieceField.CODE, code)
                .put(PieceField.LENGTH, "700")
                .put(PieceField.WIDTH, "70")
                .put(PieceField.THICKNESS, "22")
                .put(PieceField.LOT, lot);
        pieces.add(
                wood.isEmpty()
                        ? cells.put(PieceField.LAMINATION, "sapele 35 | wenge 35")
                        : cells.put(PieceField.WOOD, wood),
                LengthUnit.MM);
    }

    private void measured(String code, LocalDate day, int hundredths, int bowUm) {
        pieces.measure(
                rack.find(code).orElseThrow(),
                new PieceCells()
                        .put(PieceField.MOISTURE, hundredths / 100 + "." + String.format("%02d", hundredths % 100))
                        .put(PieceField.METER, "pin")
                        .put(PieceField.BOW, bowUm / 1000 + "." + String.format("%03d", bowUm % 1000))
                        .put(PieceField.MEASURED_ON, day.toString()),
                LengthUnit.MM);
        moisture.add(new Reading(code, day, hundredths));
        bow.add(new Reading(code, day, bowUm));
    }

    private static Question of(Measure measure) {
        return new Question(measure, null, null, null);
    }

    private static void agree(List<Month> found, List<Reading> entered) {
        TreeMap<YearMonth, List<Long>> byMonth = new TreeMap<>();
        entered.forEach(r -> byMonth.computeIfAbsent(YearMonth.from(r.day()), m -> new ArrayList<>())
                .add(r.value()));
        assertThat(found.stream().map(Month::month)).containsExactlyElementsOf(byMonth.keySet());
        for (Month month : found) {
            List<Long> values = byMonth.getOrDefault(month.month(), List.of());
            assertThat(month.readings()).isEqualTo(values.size());
            assertThat(month.least()).isEqualTo(Collections.min(values));
            assertThat(month.most()).isEqualTo(Collections.max(values));
            assertThat(month.median().doubleValue())
                    .isCloseTo(Quantiles.median().compute(values), within(1e-9));
        }
    }

    @Test
    void monthsHoldTheReadingsThatWereTaken() {
        piece("RT-1", "sapele", "L-one");
        piece("RT-2", "wenge", "L-one");
        piece("RT-3", "", "L-two");
        LocalDate day = LocalDate.of(2025, 1, 31);
        for (int i = 0; i < 60; i++) {
            day = day.plusDays(RANDOM.nextInt(12));
            measured("RT-" + (1 + RANDOM.nextInt(3)), day, 500 + RANDOM.nextInt(900), RANDOM.nextInt(6000));
        }
        agree(trend.months(of(Measure.MOISTURE)), moisture);
        agree(trend.months(of(Measure.BOW)), bow);
        agree(
                trend.months(new Question(Measure.MOISTURE, null, null, "RT-2")),
                moisture.stream().filter(r -> r.piece().equals("RT-2")).toList());
        agree(
                trend.months(new Question(Measure.MOISTURE, "sapele", null, null)),
                moisture.stream().filter(r -> r.piece().equals("RT-1")).toList());
        agree(
                trend.months(new Question(Measure.BOW, null, "l-ONE", null)),
                bow.stream().filter(r -> !r.piece().equals("RT-3")).toList());
        YearMonth last = YearMonth.from(day);
        assertThat(trend.readings(of(Measure.MOISTURE), last, 500))
                .containsExactlyInAnyOrderElementsOf(moisture.stream()
                        .filter(r -> YearMonth.from(r.day()).equals(last))
                        .toList());
        assertThat(trend.readings(of(Measure.MOISTURE), null, 5))
                .hasSize(5)
                .isSortedAccordingTo((a, b) -> b.day().compareTo(a.day()));
        for (Measure measure : List.of(Measure.MOISTURE, Measure.BOW)) {
            assertThat(each(of(measure), null))
                    .as("one after the other, of all months")
                    .containsExactlyInAnyOrderElementsOf(measure == Measure.MOISTURE ? moisture : bow)
                    .isEqualTo(trend.readings(of(measure), null, 500));
        }
        assertThat(each(of(Measure.BOW), last)).isEqualTo(trend.readings(of(Measure.BOW), last, 500));
        Question narrow = new Question(Measure.BOW, null, null, "RT-2");
        assertThat(each(narrow, null)).isNotEmpty().isEqualTo(trend.readings(narrow, null, 500));
        assertThat(trend.woods().stream().map(ReadingTrend.WoodName::id)).contains("sapele", "wenge");
        assertThat(trend.lot("l-TWO")).contains("L-two");
        assertThat(trend.lot("L-9")).isEmpty();
    }

    private List<Reading> each(Question question, @Nullable YearMonth month) {
        List<Reading> taken = new ArrayList<>();
        trend.each(question, month, taken::add);
        return taken;
    }

    @Test
    void aRackNobodyMeasuredHasNoMonths() {
        piece("RT-4", "sapele", "L-one");
        assertThat(trend.months(of(Measure.MOISTURE))).isEmpty();
        assertThat(trend.readings(of(Measure.CUP), null, 10)).isEmpty();
        assertThat(each(of(Measure.CUP), null)).isEmpty();
    }
}
