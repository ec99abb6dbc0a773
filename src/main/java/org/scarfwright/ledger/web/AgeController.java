package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.RackAge;
import org.scarfwright.rack.RackAge.Day;
import org.scarfwright.web.BarChart;
import org.scarfwright.web.CsvSheet;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;

/** How long the wood of the rack has been there. */
@Controller
@Tag(name = "Yield", description = "What became of the wood, added up from the ledger")
class AgeController {
    private static final int MOST_SHOWN = 200;
    private static final LocalDate EARLIEST = LocalDate.of(1, 1, 1);

    /** A bar begins at so many months; the last has no end. */
    private static final List<Integer> BEGINS = List.of(0, 1, 3, 6, 12, 24);

    private final RackAge age;
    private final Clock clock;

    AgeController(RackAge age, Clock clock) {
        this.age = age;
        this.clock = clock;
    }

    /**
     * Pieces of one age.
     *
     * @param first the earliest day they came
     * @param last the latest
     */
    record Bar(int from, String title, LocalDate first, LocalDate last, int pieces, Volume volume) {}

    /** A piece as a row. */
    record Row(Piece piece, String size) {}

    /** Pieces of one age. */
    @Schema(name = "RackAge")
    record BarJson(
            @Schema(description = "Months on the rack at the least")
            int months,

            LocalDate cameFrom,
            LocalDate cameUntil,
            int pieces,
            BigDecimal volumeMm3) {}

    private List<Bar> bars() {
        LocalDate today = LocalDate.now(clock);
        List<Day> days = age.days();
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < BEGINS.size(); i++) {
            int from = BEGINS.get(i);
            boolean oldest = i == BEGINS.size() - 1;
            // A day that is yet to come, by the clock of another machine, counts as today.
            LocalDate last = i == 0 ? LocalDate.of(9999, 12, 31) : today.minusMonths(from);
            LocalDate first =
                    oldest ? EARLIEST : today.minusMonths(BEGINS.get(i + 1)).plusDays(1);
            List<Day> inside = days.stream()
                    .filter(d -> !d.since().isBefore(first) && !d.since().isAfter(last))
                    .toList();
            bars.add(new Bar(
                    from,
                    oldest ? from + " and more" : from + " to " + BEGINS.get(i + 1),
                    first,
                    last,
                    inside.stream().mapToInt(Day::pieces).sum(),
                    inside.stream().map(Day::volume).reduce(Volume.ZERO, Volume::plus)));
        }
        return bars;
    }

    @GetMapping("/yield/age")
    ModelAndView show(@RequestParam(name = "months", required = false) @Nullable String months) {
        List<Bar> bars = bars();
        ModelAndView page = new ModelAndView("ledger/age");
        page.addObject("bars", bars);
        page.addObject("pieceCount", bars.stream().mapToInt(Bar::pieces).sum());
        page.addObject("sum", bars.stream().map(Bar::volume).reduce(Volume.ZERO, Volume::plus));
        page.addObject(
                "old",
                bars.get(bars.size() - 1).pieces() + bars.get(bars.size() - 2).pieces());
        page.addObject(
                "drawing",
                BarChart.of(
                        "age",
                        "Wood on the rack by its age",
                        "",
                        "Litres of wood by months on the rack; above each bar the number of pieces. Hatched: a year and more.",
                        bars.stream()
                                .map(b -> new BarChart.Bar(
                                        b.from()
                                                + (b.from() == 24
                                                        ? "+"
                                                        : "–" + BEGINS.get(BEGINS.indexOf(b.from()) + 1)),
                                        b.volume().cm3() / 1000,
                                        String.valueOf(b.pieces()),
                                        b.from() >= 12))
                                .toList()));
        Bar chosen = bars.stream()
                .filter(b -> String.valueOf(b.from()).equals(months))
                .findFirst()
                .orElse(null);
        page.addObject("chosen", chosen);
        page.addObject("most", MOST_SHOWN);
        page.addObject(
                "rows",
                chosen == null
                        ? List.of()
                        : age.cameBetween(chosen.first(), chosen.last(), MOST_SHOWN).stream()
                                .map(p -> new Row(p, PieceWords.size(p)))
                                .toList());
        return page;
    }

    /** The bars, or the pieces of one of them. */
    @GetMapping("/yield/age.csv")
    ResponseEntity<String> csv(@RequestParam(name = "months", required = false) @Nullable String months) {
        List<Bar> bars = bars();
        if (months == null || months.isBlank()) {
            CsvSheet sheet = new CsvSheet("months", "came_from", "came_until", "pieces", "volume_mm3");
            bars.forEach(b -> sheet.row(
                    b.from(), b.first(), b.last(), b.pieces(), b.volume().toMm3()));
            return YieldController.file("rack-age.csv", sheet.text());
        }
        Bar chosen = bars.stream()
                .filter(b -> String.valueOf(b.from()).equals(months))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException(new FieldError(
                        "/months",
                        "Months",
                        months,
                        "“" + months + "” is no age the report has; write one of "
                                + BEGINS.stream().map(String::valueOf).collect(Collectors.joining(", ")))));
        CsvSheet sheet = new CsvSheet("code", "length_mm", "width_mm", "thickness_mm", "since", "lot", "place");
        age.cameBetween(chosen.first(), chosen.last(), Integer.MAX_VALUE)
                .forEach(p -> sheet.row(
                        p.code(),
                        p.length().length().toMm(),
                        p.width().length().toMm(),
                        p.thickness().length().toMm(),
                        p.since(),
                        p.lot(),
                        p.place()));
        return YieldController.file("rack-age-" + chosen.from() + ".csv", sheet.text());
    }

    @GetMapping("/api/yield/age")
    @ResponseBody
    @Operation(summary = "How long the wood of the rack has been there")
    List<BarJson> ages() {
        return bars().stream()
                .map(b -> new BarJson(
                        b.from(), b.first(), b.last(), b.pieces(), b.volume().toMm3()))
                .toList();
    }
}
