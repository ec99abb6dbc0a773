package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Yield;
import org.scarfwright.ledger.YieldFigure;
import org.scarfwright.ledger.YieldSums;
import org.scarfwright.measure.Money;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The yield for programs. */
@RestController
@RequestMapping("/api/yield")
@Tag(name = "Yield", description = "What became of the wood, added up from the ledger")
class YieldApi {
    private static final int USUAL_SIZE = 50;

    private static final String ASKED =
            "by: week, month, wood, lot, design or person, usually week. from, to: first and last day, both may be left out.";

    private final Yield yield;

    YieldApi(Yield yield) {
        this.yield = yield;
    }

    /** Sums. */
    @Schema(name = "YieldSums")
    record SumsJson(
            @Schema(description = "Volume of each figure, exact, in mm³; input is the sum of parts to unexplained")
            Map<String, BigDecimal> mm3,

            @Schema(description = "What plans said of the same cuts")
            Map<String, BigDecimal> plannedMm3,

            @Schema(description = "Of mm3, what a plan said something of")
            Map<String, BigDecimal> withPlanMm3,

            @Schema(description = "parts / (input - rests), 0 to 1; null when nothing was used") @Nullable
            BigDecimal netYield,

            @Schema(description = "(parts + rests) / input") @Nullable
            BigDecimal recovery,

            @Schema(description = "Share of the parts that came from pieces set aside, short or narrow") @Nullable
            BigDecimal rescue) {
        static SumsJson of(YieldSums sums) {
            Map<String, BigDecimal> real = new LinkedHashMap<>();
            Map<String, BigDecimal> planned = new LinkedHashMap<>();
            Map<String, BigDecimal> comparable = new LinkedHashMap<>();
            for (YieldFigure figure : YieldFigure.values()) {
                real.put(figure.word(), sums.of(figure).toMm3());
                planned.put(figure.word(), sums.plannedOf(figure).toMm3());
                comparable.put(figure.word(), sums.comparableOf(figure).toMm3());
            }
            return new SumsJson(
                    real,
                    planned,
                    comparable,
                    YieldCsv.share(sums.netYield()),
                    YieldCsv.share(sums.recovery()),
                    YieldCsv.share(sums.rescue()));
        }
    }

    /** A line. */
    @Schema(name = "YieldLine")
    record LineJson(String key, String title, SumsJson sums) {}

    /** Where a share of the input went. */
    @Schema(name = "YieldShare")
    record ShareJson(
            String figure,

            @Schema(description = "All shares together are 100.00")
            BigDecimal percent) {}

    /** A week or a month. */
    @Schema(name = "YieldPeriod")
    record PeriodJson(
            String key,
            @Nullable BigDecimal netYield,

            @Schema(description = "Of this one and those before it, at most five that have one") @Nullable
            BigDecimal median) {}

    /** A cut that had a plan. */
    @Schema(name = "YieldCut")
    record DotJson(long entry, BigDecimal plannedWasteMm3, BigDecimal realWasteMm3) {}

    /** Cost of the wood of a design's necks. */
    @Schema(name = "YieldNeckCost")
    record CostJson(
            String design,
            int necks,

            @Schema(description = "Necks with wood of which nobody knows what it cost; not among the others")
            int unknown,

            BigDecimal sum,
            @Nullable BigDecimal mean,
            @Nullable BigDecimal least,
            @Nullable BigDecimal most) {
        static CostJson of(Yield.NeckCost c) {
            return new CostJson(
                    c.design(),
                    c.necks(),
                    c.unknown(),
                    c.sum().toDecimal(),
                    money(c.mean()),
                    money(c.least()),
                    money(c.most()));
        }

        private static @Nullable BigDecimal money(@Nullable Money money) {
            return money == null ? null : money.toDecimal();
        }
    }

    /** The yield. */
    @Schema(name = "Yield")
    record ReportJson(
            String by,
            @Nullable LocalDate from,
            @Nullable LocalDate to,
            List<LineJson> lines,
            SumsJson total,

            @Schema(description = "What the pieces lost, from their sizes; equals total.mm3.input when it closes")
            BigDecimal takenMm3,

            boolean closes,
            List<ShareJson> flow,
            List<PeriodJson> trend,
            List<DotJson> cuts,
            List<CostJson> necks) {
        static ReportJson of(Yield.Report r) {
            return new ReportJson(
                    r.question().by().word(),
                    r.question().from(),
                    r.question().to(),
                    r.lines().stream()
                            .map(l -> new LineJson(l.key(), l.title(), SumsJson.of(l.sums())))
                            .toList(),
                    SumsJson.of(r.total()),
                    r.taken().toMm3(),
                    r.closes(),
                    r.total().flow().stream()
                            .map(s -> new ShareJson(s.figure().word(), BigDecimal.valueOf(s.hundredths(), 2)))
                            .toList(),
                    r.trend().stream()
                            .map(p -> new PeriodJson(p.key(), YieldCsv.share(p.netYield()), YieldCsv.share(p.median())))
                            .toList(),
                    r.dots().stream()
                            .map(d -> new DotJson(
                                    d.entry(), d.planned().toMm3(), d.real().toMm3()))
                            .toList(),
                    r.necks().stream().map(CostJson::of).toList());
        }
    }

    /** One outcome behind a figure. */
    @Schema(name = "YieldRow")
    record RowJson(
            long entry,
            Instant at,
            String who,
            String piece,
            String became,
            String of,
            BigDecimal volumeMm3,

            @Schema(
                    description =
                            "Of the volume in this figure and line; less where several designs share it, and 0 of a"
                                    + " spoilt part beside the plan that foresaw it")
            BigDecimal countedMm3,

            @Schema(description = "What the plan said of this figure and line; null where no plan said anything")
            @Nullable
            BigDecimal plannedMm3) {
        static RowJson of(Yield.Row r) {
            return new RowJson(
                    r.entry(),
                    r.at(),
                    r.who(),
                    r.piece(),
                    r.became().word(),
                    r.of(),
                    r.volume().toMm3(),
                    r.counted().toMm3(),
                    r.planned() == null ? null : r.planned().toMm3());
        }
    }

    /** One page of rows. */
    @Schema(name = "YieldRows")
    record RowsJson(
            List<RowJson> rows,

            @Schema(description = "Of countedMm3, over all pages")
            BigDecimal sumMm3,

            @Schema(
                    description =
                            "Of plannedMm3, over all pages; null for rows that are not beside their plan or of one entry")
            @Nullable
            BigDecimal plannedSumMm3,

            int page,
            int pages,
            long total) {}

    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(summary = "What became of the wood that was cut and scrapped", description = ASKED)
    ReportJson report(
            @RequestParam(name = "by", defaultValue = "week") String by,
            @RequestParam(name = "from", required = false) @Nullable String from,
            @RequestParam(name = "to", required = false) @Nullable String to) {
        YieldQuery query = query(by, from, to);
        query.check();
        return ReportJson.of(yield.report(query.question()));
    }

    @GetMapping(path = "/rows", produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "The rows behind a figure, the newest first",
            description =
                    ASKED
                            + " key: of one line; all when left out. what: the figure, such as parts, kerf, waste or input. beside: plan"
                            + " for the rows of plannedMm3 and withPlanMm3. entry: of one cut. page from 1; size 1 to 500, usually 50.")
    RowsJson rows(
            @RequestParam Map<String, String> typed,
            @RequestParam(name = "page", defaultValue = "1") int page,
            @RequestParam(name = "size", defaultValue = "" + USUAL_SIZE) int size) {
        YieldQuery query = new YieldQuery(typed);
        Yield.Wanted wanted = query.wanted();
        query.check();
        checkPage(page, size);
        Yield.Rows found = yield.rows(wanted, page, size);
        return new RowsJson(
                found.rows().stream().map(RowJson::of).toList(),
                found.sum().toMm3(),
                YieldQuery.tellsPlanned(wanted) ? found.planned().toMm3() : null,
                found.page(),
                found.pages(),
                found.total());
    }

    /** @throws InvalidInputException when there can be no such page */
    static void checkPage(int page, int size) {
        if (page < 1) {
            throw refused("/page", "Page", page, "is not a page; the first is 1");
        }
        if (size < 1 || size > Yield.LARGEST_PAGE) {
            throw refused("/size", "Size", size, "is not a number from 1 to " + Yield.LARGEST_PAGE);
        }
    }

    private static YieldQuery query(String by, @Nullable String from, @Nullable String to) {
        Map<String, String> typed = new LinkedHashMap<>(Map.of("by", by));
        if (from != null) {
            typed.put("from", from);
        }
        if (to != null) {
            typed.put("to", to);
        }
        return new YieldQuery(typed);
    }

    private static InvalidInputException refused(String pointer, String label, int value, String message) {
        return new InvalidInputException(new FieldError(pointer, label, String.valueOf(value), message));
    }
}
