package org.scarfwright.ledger.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Yield;
import org.scarfwright.ledger.YieldFigure;
import org.scarfwright.ledger.YieldSums;
import org.scarfwright.web.CsvSheet;

/** The yield as CSV. Volumes are exact, in mm³. */
final class YieldCsv {
    private YieldCsv() {}

    static String of(Yield.Report report) {
        List<String> header = new ArrayList<>(List.of("by", "key", "title"));
        for (YieldFigure figure : YieldFigure.values()) {
            header.add(figure.word() + "_mm3");
        }
        header.addAll(List.of(
                "net_yield",
                "recovery",
                "rescue",
                "planned_parts_mm3",
                "parts_with_plan_mm3",
                "planned_waste_mm3",
                "waste_with_plan_mm3"));
        CsvSheet sheet = new CsvSheet(header.toArray(String[]::new));
        for (Yield.Line line : report.lines()) {
            List<@Nullable Object> cells = new ArrayList<>();
            cells.add(report.question().by().word());
            cells.add(line.key());
            cells.add(line.title());
            YieldSums sums = line.sums();
            for (YieldFigure figure : YieldFigure.values()) {
                cells.add(sums.of(figure).toMm3());
            }
            cells.add(share(sums.netYield()));
            cells.add(share(sums.recovery()));
            cells.add(share(sums.rescue()));
            cells.add(sums.plannedOf(YieldFigure.PARTS).toMm3());
            cells.add(sums.comparableOf(YieldFigure.PARTS).toMm3());
            cells.add(sums.plannedOf(YieldFigure.WASTE).toMm3());
            cells.add(sums.comparableOf(YieldFigure.WASTE).toMm3());
            sheet.row(cells.toArray());
        }
        return sheet.text();
    }

    /** Rows that are sent one by one, as they come. */
    static CsvSheet rows(HttpServletResponse response) throws IOException {
        return CsvSheet.sent(
                response,
                "yield-rows.csv",
                "entry",
                "at",
                "who",
                "piece",
                "became",
                "of",
                "volume_mm3",
                "counted_mm3",
                "planned_mm3");
    }

    static void row(CsvSheet sheet, Yield.Row r) {
        sheet.row(
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

    /** 0.6324, as a share of 1. */
    static @Nullable BigDecimal share(OptionalDouble share) {
        return share.isEmpty() ? null : BigDecimal.valueOf(share.getAsDouble()).setScale(6, RoundingMode.HALF_UP);
    }
}
