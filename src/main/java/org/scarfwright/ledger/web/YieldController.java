package org.scarfwright.ledger.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Yield;
import org.scarfwright.ledger.Yield.Report;
import org.scarfwright.ledger.YieldFigure;
import org.scarfwright.ledger.YieldSums;
import org.scarfwright.measure.Volume;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.CsvSheet;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** What became of the wood, added up, and the rows behind every figure. */
@Controller
class YieldController {
    static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private static final int ON_PAGE = 50;
    private static final int LINES_ON_PAGE = 25;
    private static final int ROWS_OF_A_CHART = 50;
    private static final List<Choice> WAYS = List.of(Yield.By.values()).stream()
            .map(b -> new Choice(b.word(), b.title()))
            .toList();

    private final Yield yield;
    private final Shop shop;
    private final Formats formats;

    YieldController(Yield yield, Shop shop, Formats formats) {
        this.yield = yield;
        this.shop = shop;
        this.formats = formats;
    }

    /** A column of volumes: the figure, and its heading. */
    record Column(YieldFigure figure, String title) {
        static Column of(YieldFigure figure) {
            return new Column(figure, figure.title());
        }

        public String word() {
            return figure.word();
        }
    }

    /** A line with its shares in words. */
    record Row(String key, String title, YieldSums sums, String netYield, String recovery, String rescue) {
        public Volume of(YieldFigure figure) {
            return sums.of(figure);
        }
    }

    /**
     * Which lines of a report a page shows.
     *
     * @param first counted from 1; 0 where there are none
     */
    record Lines(int page, int pages, int first, int last, int total) {
        /** Of weeks and months the last page is shown where none is asked for, because it is what is looked at. */
        static Lines of(Report report, String asked) {
            int total = report.lines().size();
            int pages = Math.max(1, (total - 1) / LINES_ON_PAGE + 1);
            boolean inTime =
                    report.question().by() == Yield.By.WEEK || report.question().by() == Yield.By.MONTH;
            int page = asked.isEmpty() && inTime ? pages : Math.min(pages, number(asked));
            return new Lines(
                    page,
                    pages,
                    Math.min(total, (page - 1) * LINES_ON_PAGE + 1),
                    Math.min(total, page * LINES_ON_PAGE),
                    total);
        }
    }

    /** The last ones, as many as the table beside a chart has. */
    static <T> List<T> last(List<T> all) {
        return all.subList(Math.max(0, all.size() - ROWS_OF_A_CHART), all.size());
    }

    @GetMapping("/yield")
    ModelAndView show(@RequestParam Map<String, String> typed) {
        YieldQuery query = new YieldQuery(typed);
        ModelAndView page = page("ledger/yield", query);
        page.addObject("ways", WAYS);
        if (!query.errors().isEmpty()) {
            page.addObject("report", null);
            return page;
        }
        Report report = yield.report(query.question());
        page.addObject("report", report);
        page.addObject("byTitle", query.question().by().title());
        Lines lines = Lines.of(report, query.text("lines"));
        page.addObject("lines", lines);
        page.addObject(
                "rows",
                report.lines().subList(lines.first() - (lines.total() == 0 ? 0 : 1), lines.last()).stream()
                        .map(this::row)
                        .toList());
        page.addObject("trendRows", last(report.trend()));
        page.addObject("total", row(new Yield.Line("", "All", report.total())));
        page.addObject(
                "columns",
                List.of(YieldFigure.INPUT, YieldFigure.PARTS, YieldFigure.RESTS, YieldFigure.WASTE).stream()
                        .map(Column::of)
                        .toList());
        page.addObject("wastes", YieldFigure.wastes().stream().map(Column::of).toList());
        page.addObject("became", report.total().of(YieldFigure.INPUT));
        page.addObject("unexplained", report.total().of(YieldFigure.UNEXPLAINED));
        page.addObject("compared", List.of(YieldFigure.PARTS, YieldFigure.WASTE));
        YieldCharts.fill(page, report, formats);
        page.addObject("currency", shop.settings().currency());
        return page;
    }

    private Row row(Yield.Line line) {
        return new Row(
                line.key(),
                line.title(),
                line.sums(),
                percent(line.sums().netYield()),
                percent(line.sums().recovery()),
                percent(line.sums().rescue()));
    }

    private String percent(OptionalDouble share) {
        return share.isEmpty() ? "–" : formats.percent(share.getAsDouble());
    }

    @GetMapping("/yield/rows")
    ModelAndView rows(@RequestParam Map<String, String> typed) {
        YieldQuery query = new YieldQuery(typed);
        Yield.Wanted wanted = query.wanted();
        ModelAndView page = page("ledger/yield-rows", query);
        page.addObject("figure", wanted.figure());
        page.addObject("key", wanted.key());
        page.addObject("entry", wanted.entry());
        page.addObject("besidePlan", wanted.besidePlan());
        page.addObject("tellsPlanned", YieldQuery.tellsPlanned(wanted));
        page.addObject("address", query.address(wanted));
        page.addObject("yieldAddress", query.address());
        page.addObject(
                "found", query.errors().isEmpty() ? yield.rows(wanted, number(query.text("page")), ON_PAGE) : null);
        return page;
    }

    private static ModelAndView page(String template, YieldQuery query) {
        List<FieldError> errors = query.errors();
        ModelAndView page = new ModelAndView(template);
        page.setStatus(errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("by", query.question().by().word());
        page.addObject("byTyped", query.text("by").isEmpty() ? "week" : query.text("by"));
        page.addObject("from", query.text("from"));
        page.addObject("to", query.text("to"));
        page.addObject("address", query.address());
        page.addObject("errorList", new ArrayList<>(errors));
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    @GetMapping("/yield.csv")
    ResponseEntity<String> csv(@RequestParam Map<String, String> typed) {
        YieldQuery query = new YieldQuery(typed);
        query.check();
        return file("yield.csv", YieldCsv.of(yield.report(query.question())));
    }

    /** Rows are sent as they are read: those of five years are too many to be held. */
    @GetMapping("/yield/rows.csv")
    void rowsCsv(@RequestParam Map<String, String> typed, HttpServletResponse response) throws IOException {
        YieldQuery query = new YieldQuery(typed);
        Yield.Wanted wanted = query.wanted();
        query.check();
        CsvSheet sheet = YieldCsv.rows(response);
        yield.each(wanted, r -> YieldCsv.row(sheet, r));
        sheet.end();
    }

    static ResponseEntity<String> file(String name, String text) {
        return ResponseEntity.ok()
                .contentType(CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .body(text);
    }

    private static int number(@Nullable String page) {
        return page != null && page.matches("[1-9]\\d{0,6}") ? Integer.parseInt(page) : 1;
    }
}
