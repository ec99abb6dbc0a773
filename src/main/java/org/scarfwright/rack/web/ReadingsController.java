package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.ReadingTrend;
import org.scarfwright.rack.ReadingTrend.Measure;
import org.scarfwright.rack.ReadingTrend.Month;
import org.scarfwright.rack.ReadingTrend.Reading;
import org.scarfwright.web.Choice;
import org.scarfwright.web.CsvSheet;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.TimeChart;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;

/** Moisture and warp over time. */
@Controller
@Tag(name = "Yield", description = "What became of the wood, added up from the ledger")
class ReadingsController {
    /** More dots than these are one blot. */
    private static final int MOST_DRAWN = 400;

    private static final int MOST_SHOWN = 200;
    private static final List<Choice> MEASURES =
            Stream.of(Measure.values()).map(m -> new Choice(word(m), m.title())).toList();

    private final ReadingTrend trend;
    private final Rack rack;

    ReadingsController(ReadingTrend trend, Rack rack) {
        this.trend = trend;
        this.rack = rack;
    }

    /** A month as a row. */
    record Row(String month, long readings, String least, String median, String most) {}

    /** A reading as a row. */
    record ReadingRow(String piece, LocalDate day, String value) {}

    /** A month of readings. */
    @Schema(name = "ReadingMonth", description = "Moisture in percent, warp in mm over the whole piece")
    record MonthJson(String month, long readings, BigDecimal least, BigDecimal median, BigDecimal most) {}

    @GetMapping("/yield/readings")
    ModelAndView show(@RequestParam Map<String, String> typed) {
        ReadingsQuery query = new ReadingsQuery(typed, trend, rack);
        ModelAndView page = new ModelAndView("rack/readings");
        page.setStatus(query.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        Measure measure = query.question().measure();
        List<Choice> woods = new ArrayList<>(List.of(new Choice("", "Any wood")));
        trend.woods().forEach(w -> woods.add(new Choice(w.id(), w.name())));
        page.addObject("measures", MEASURES);
        page.addObject("woods", woods);
        page.addObject("what", word(measure));
        page.addObject("measureTitle", measure.title());
        page.addObject("unitName", unit(measure));
        for (String name : List.of("wood", "lot", "piece")) {
            page.addObject(name + "Typed", query.text(name));
        }
        page.addObject(
                "narrowed",
                Stream.of("wood", "lot", "piece").anyMatch(n -> !query.text(n).isEmpty()));
        page.addObject("errorList", query.errors());
        page.addObject("errors", FieldErrors.byField(query.errors()));
        List<Month> months = query.errors().isEmpty() ? trend.months(query.question()) : List.of();
        page.addObject("asked", query.errors().isEmpty());
        page.addObject("rows", months.stream().map(m -> row(measure, m)).toList());
        page.addObject("most", MOST_SHOWN);
        YearMonth month = query.month();
        page.addObject("month", month == null ? null : month.toString());
        page.addObject(
                "readings",
                months.isEmpty() || month == null
                        ? List.of()
                        : trend.readings(query.question(), month, MOST_SHOWN).stream()
                                .map(r -> new ReadingRow(
                                        r.piece(), r.day(), shown(measure, BigDecimal.valueOf(r.value()))))
                                .toList());
        if (!months.isEmpty()) {
            List<Reading> drawn = trend.readings(query.question(), null, MOST_DRAWN);
            long all = months.stream().mapToLong(Month::readings).sum();
            page.addObject("words", words(measure, months));
            page.addObject(
                    "drawing",
                    TimeChart.of(
                            "readings",
                            new TimeChart.Words(
                                    measure.title() + " over time",
                                    measure.title() + ", " + unit(measure),
                                    (all > drawn.size()
                                                    ? "Dots: the last " + drawn.size() + " of " + all + " readings"
                                                    : "Dots: readings")
                                            + ". Line: the median of each month."),
                            drawn.stream()
                                    .map(r -> new TimeChart.Dot(
                                            r.day(),
                                            number(measure, BigDecimal.valueOf(r.value()))
                                                    .doubleValue()))
                                    .toList(),
                            months.stream()
                                    .filter(m -> !m.month()
                                            .isBefore(YearMonth.from(
                                                    drawn.get(drawn.size() - 1).day())))
                                    .map(m -> new TimeChart.Dot(
                                            m.month().atDay(15),
                                            number(measure, m.median()).doubleValue()))
                                    .toList()));
        }
        return page;
    }

    private static Row row(Measure measure, Month m) {
        return new Row(
                m.month().toString(),
                m.readings(),
                shown(measure, BigDecimal.valueOf(m.least())),
                shown(measure, m.median()),
                shown(measure, BigDecimal.valueOf(m.most())));
    }

    private static String words(Measure measure, List<Month> months) {
        Month last = months.get(months.size() - 1);
        String now = shown(measure, last.median());
        String at = "In " + last.month() + " the median of "
                + (last.readings() == 1 ? "1 reading" : last.readings() + " readings") + " is " + now + " "
                + unit(measure);
        if (months.size() == 1) {
            return at + "; with readings of one month there is nothing to compare it with.";
        }
        Month first = months.get(0);
        String then = shown(measure, first.median());
        if (then.equals(now)) {
            return at + ", as in " + first.month() + ".";
        }
        return at + ", " + (last.median().compareTo(first.median()) > 0 ? "up" : "down") + " from " + then + " "
                + unit(measure) + " in " + first.month() + ".";
    }

    /** Sent while it is read: a shop of many years has more readings than should be held at once. */
    @GetMapping("/yield/readings.csv")
    void csv(@RequestParam Map<String, String> typed, HttpServletResponse response) throws IOException {
        ReadingsQuery query = new ReadingsQuery(typed, trend, rack);
        query.check();
        Measure measure = query.question().measure();
        CsvSheet sheet = CsvSheet.sent(
                response,
                "readings-" + word(measure) + ".csv",
                "piece",
                "day",
                word(measure) + (measure == Measure.MOISTURE ? "_percent" : "_mm"));
        trend.each(
                query.question(),
                query.month(),
                r -> sheet.row(r.piece(), r.day(), number(measure, BigDecimal.valueOf(r.value()))));
        sheet.end();
    }

    @GetMapping("/api/yield/readings")
    @ResponseBody
    @Operation(
            summary = "Moisture or warp by months",
            description = "what: moisture (usual), bow, crook, cup or twist. wood, lot, piece: narrow it down.")
    List<MonthJson> months(
            @RequestParam(name = "what", defaultValue = "") String what,
            @RequestParam(name = "wood", defaultValue = "") String wood,
            @RequestParam(name = "lot", defaultValue = "") String lot,
            @RequestParam(name = "piece", defaultValue = "") String piece) {
        ReadingsQuery query =
                new ReadingsQuery(Map.of("what", what, "wood", wood, "lot", lot, "piece", piece), trend, rack);
        query.check();
        Measure measure = query.question().measure();
        return trend.months(query.question()).stream()
                .map(m -> new MonthJson(
                        m.month().toString(),
                        m.readings(),
                        number(measure, BigDecimal.valueOf(m.least())),
                        number(measure, m.median()),
                        number(measure, BigDecimal.valueOf(m.most()))))
                .toList();
    }

    private static String word(Measure measure) {
        return measure.name().toLowerCase(Locale.ROOT);
    }

    private static String unit(Measure measure) {
        return measure == Measure.MOISTURE ? "%" : "mm";
    }

    /** In percent or millimetres; a median may lie halfway between two values. */
    private static BigDecimal number(Measure measure, BigDecimal kept) {
        return kept.movePointLeft(measure == Measure.MOISTURE ? 2 : 3)
                .setScale(4, RoundingMode.HALF_UP)
                .stripTrailingZeros();
    }

    private static String shown(Measure measure, BigDecimal kept) {
        return number(measure, kept)
                .setScale(measure == Measure.MOISTURE ? 1 : 2, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
