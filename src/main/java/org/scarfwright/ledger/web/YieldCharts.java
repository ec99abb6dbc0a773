package org.scarfwright.ledger.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.IntStream;
import org.scarfwright.ledger.Yield;
import org.scarfwright.ledger.Yield.Dot;
import org.scarfwright.ledger.Yield.Period;
import org.scarfwright.ledger.Yield.Report;
import org.scarfwright.ledger.YieldFigure;
import org.scarfwright.ledger.YieldSums.Share;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.DotChart;
import org.scarfwright.web.FlowChart;
import org.scarfwright.web.Formats;
import org.scarfwright.web.ShareStrip;
import org.scarfwright.web.TrendChart;
import org.springframework.web.servlet.ModelAndView;

/** The yield drawn, each drawing with a sentence that says what is to be seen in it. */
final class YieldCharts {
    /** Below this many points of a percent two yields are called alike. Choice of this program. */
    private static final double ALIKE = 0.01;

    private YieldCharts() {}

    /** A cut as a row of the table beside its dot. */
    record DotRow(long entry, String planned, String real, String plannedWords, String realWords) {
        static DotRow of(Dot dot, Formats formats) {
            String name = "Entry " + dot.entry();
            return new DotRow(
                    dot.entry(),
                    formats.cm3(dot.planned()),
                    formats.cm3(dot.real()),
                    "Waste planned, " + name + ": " + formats.volume(dot.planned()),
                    "Waste really, " + name + ": " + formats.volume(dot.real()));
        }

        public String address() {
            return "/yield/rows?what=" + YieldFigure.WASTE.word() + "&entry=" + entry;
        }

        String words() {
            return "Entry " + entry + ": " + planned + " cm³ planned, " + real + " cm³ really";
        }
    }

    /** A share as a row of the table beside the drawing. */
    record ShareRow(YieldFigure figure, Volume volume, String percent) {}

    static void fill(ModelAndView page, Report report, Formats formats) {
        List<Share> flow = report.total().flow();
        List<FlowChart.Arm> arms = flow.stream()
                .map(s -> new FlowChart.Arm(s.figure().title(), s.hundredths(), kind(s.figure())))
                .toList();
        page.addObject(
                "flowRows",
                flow.stream()
                        .map(s -> new ShareRow(
                                s.figure(),
                                s.volume(),
                                BigDecimal.valueOf(s.hundredths(), 2).toPlainString() + " %"))
                        .toList());
        page.addObject("flow", FlowChart.of("flow", "Where the wood went", "Input, 100.00 %", arms));
        page.addObject("flowWords", flowWords(flow));
        boolean months = report.question().by() == Yield.By.MONTH;
        page.addObject("periodWord", months ? "Month" : "Week");
        page.addObject(
                "trendDrawing",
                TrendChart.of(
                        "trend",
                        "Net yield over time",
                        "Dots: " + (months ? "months" : "weeks") + ". Line: the median of the last " + Yield.MEDIAN_OF
                                + " that had cuts.",
                        report.trend().stream()
                                .map(p -> new TrendChart.Mark(
                                        p.key(),
                                        p.place(),
                                        p.netYield().orElse(0),
                                        p.median().orElse(0)))
                                .toList()));
        page.addObject("trendWords", trendWords(report.trend(), months ? "month" : "week"));
        List<DotRow> dots =
                report.dots().stream().map(d -> DotRow.of(d, formats)).toList();
        page.addObject("dotRows", YieldController.last(dots));
        page.addObject(
                "dotDrawing",
                DotChart.of(
                        "dots",
                        "Waste, planned against real",
                        new DotChart.Axes("planned waste", "real waste", "cm³"),
                        "Each dot is a cut and opens its rows. On the slanting line it wasted what the plan said; above it, more.",
                        IntStream.range(0, dots.size())
                                .mapToObj(i -> new DotChart.Dot(
                                        report.dots().get(i).planned().cm3(),
                                        report.dots().get(i).real().cm3(),
                                        dots.get(i).address(),
                                        dots.get(i).words()))
                                .toList()));
        page.addObject("dotWords", dotWords(report.dots()));
    }

    private static ShareStrip.Kind kind(YieldFigure figure) {
        return switch (figure) {
            case PARTS -> ShareStrip.Kind.USED;
            case RESTS -> ShareStrip.Kind.REST;
            default -> ShareStrip.Kind.WASTE;
        };
    }

    private static String flowWords(List<Share> flow) {
        return flow.stream()
                .filter(s -> kind(s.figure()) == ShareStrip.Kind.WASTE)
                .max(java.util.Comparator.comparingInt(Share::hundredths))
                .map(s -> "Most of what was lost is " + lower(s.figure().title()) + ": "
                        + BigDecimal.valueOf(s.hundredths(), 2).toPlainString() + " % of the input.")
                .orElse("Nothing was lost.");
    }

    private static String lower(String title) {
        return Character.toLowerCase(title.charAt(0)) + title.substring(1);
    }

    private static String trendWords(List<Period> trend, String period) {
        if (trend.isEmpty()) {
            return "No " + period + " has a net yield.";
        }
        Period last = trend.get(trend.size() - 1);
        double now = last.median().orElse(0);
        String at = "In " + last.key() + " the median is " + percent(now);
        if (trend.size() == 1) {
            return at + "; with one " + period + " there is nothing to compare it with.";
        }
        double before = trend.get(0).netYield().orElse(0);
        double gain = now - before;
        return at
                + (Math.abs(gain) < ALIKE
                        ? ", much as in " + trend.get(0).key() + "."
                        : ", " + (gain > 0 ? "up" : "down") + " from " + percent(before) + " in "
                                + trend.get(0).key() + ".");
    }

    private static String dotWords(List<Dot> dots) {
        if (dots.isEmpty()) {
            return "No cut had a plan.";
        }
        long more =
                dots.stream().filter(d -> d.real().compareTo(d.planned()) > 0).count();
        long less =
                dots.stream().filter(d -> d.real().compareTo(d.planned()) < 0).count();
        return "Of " + dots.size() + (dots.size() == 1 ? " cut " : " cuts ") + more + " wasted more than planned, "
                + less + " less, and " + (dots.size() - more - less) + " exactly that.";
    }

    private static String percent(double share) {
        return BigDecimal.valueOf(share)
                        .movePointRight(2)
                        .setScale(1, RoundingMode.HALF_UP)
                        .toPlainString() + " %";
    }
}
