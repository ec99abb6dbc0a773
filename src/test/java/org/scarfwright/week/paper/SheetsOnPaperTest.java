package org.scarfwright.week.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.scarfwright.joint.JigWedge;
import org.scarfwright.joint.JointInput;
import org.scarfwright.matching.LaidOut;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.week.paper.PrintedMeasures.Measure;
import org.scarfwright.week.paper.PrintedMeasures.Read;

/** Reads the vector lengths of printed sheets back with the PDF library and holds them against the plan. */
class SheetsOnPaperTest {
    private static final double OFF = 0.05;
    private static final Pattern SCALE = Pattern.compile("1 : (\\d+(?:\\.\\d)?)");
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    @Test
    @Tag("long")
    void everyDimensionOfAThousandPlansIsWithinAFiftiethOfAMillimetre() {
        RandomPlans plans = new RandomPlans(20261125);
        int checked = 0;
        for (int i = 0; i < 1000; i++) {
            PlanOnPaper plan = plans.next();
            PaperSize size = i % 2 == 0 ? PaperSize.A4 : PaperSize.LETTER;
            Correction correction = i % 5 == 0 ? new Correction(98.7) : Correction.NONE;
            Read read = PrintedMeasures.of(CutSheets.pdf(plan, size, correction));
            assertThat(read.outside()).as("plan %d leaves its paper", i).isZero();
            checked += check(read, lengthsOf(plan), correction, "plan " + i);
            assertThat(read.measures())
                    .as("long sides of plan %d", i)
                    .extracting(Measure::figure)
                    .containsAll(longSides(plan));
        }
        assertThat(checked).isGreaterThan(15_000);
        System.out.println("dimensions read back: " + checked);
    }

    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void wedgesAreTrueToScaleOnOneSheetOrSeveral(PaperSize size) {
        for (int millidegrees = 7_000; millidegrees <= 17_000; millidegrees += 500) {
            for (int thickness = 10; thickness <= 40; thickness += 6) {
                Angle angle = new Angle(millidegrees);
                JigWedge wedge = JigWedge.backing(Length.ofMm(thickness), angle);
                Read read = PrintedMeasures.of(
                        JigTemplates.pdf(angle, Length.ofMm(thickness), LengthUnit.MM, size, Correction.NONE));
                String what = angle + " through " + thickness + " mm on " + size.word();
                assertThat(read.outside()).as(what).isZero();
                List<Measure> bars = read.measures().stream()
                        .filter(m -> m.figure().endsWith("mm") || m.figure().endsWith("in"))
                        .toList();
                assertThat(bars).as(what).hasSize(2 * read.pages());
                assertThat(measured(read, MM.number(wedge.rise())))
                        .as(what)
                        .isCloseTo(wedge.base().mm() * Math.tan(Math.toRadians(millidegrees / 1000.0)), within(OFF));
                double along = read.measures().stream()
                        .filter(m -> !bars.contains(m) && !m.figure().equals(MM.number(wedge.rise())))
                        .mapToDouble(Measure::length)
                        .sum();
                // Sheets of one wedge lie on each other for 12 mm.
                assertThat(along - 12 * (read.pages() - 1))
                        .as(what)
                        .isCloseTo(wedge.base().mm(), within(OFF));
            }
        }
    }

    @Test
    void aPrinterThatPrintsAHundredAs98Point7IsMadeUpFor() {
        Correction correction = new Correction(98.7);
        Read read = PrintedMeasures.of(
                JigTemplates.pdf(Angle.ofDegrees(12), Length.ofMm(20), LengthUnit.MM, PaperSize.A4, correction));
        Measure bar = read.measures().stream()
                .filter(m -> m.figure().equals("100 mm"))
                .findFirst()
                .orElseThrow();
        // In the file the bar is 100 × 100 / 98.7; the printer makes 98.7 of each 100 again.
        assertThat(bar.length() * 98.7 / 100).isCloseTo(100, within(OFF));
        assertThat(bar.length()).isCloseTo(101.317, within(0.001));
    }

    @Test
    void twoPlansThatDifferPrintDifferently() {
        RandomPlans plans = new RandomPlans(3);
        assertThat(longSides(plans.next())).isNotEqualTo(longSides(plans.next()));
    }

    @Test
    void saysWhyAPieceThatWasMeasuredAnewIsNotDrawn() {
        PlanOnPaper plan = new RandomPlans(5).next();
        PlanOnPaper gone = new PlanOnPaper(
                plan.plan(),
                java.util.Set.of(),
                java.util.Map.of(),
                plan.saws(),
                java.util.Map.of(),
                plan.woods(),
                plan.unit(),
                plan.shortestMachined());
        String all = String.join(
                " ",
                PrintedMeasures.of(CutSheets.pdf(gone, PaperSize.A4, Correction.NONE))
                        .texts());
        assertThat(all)
                .contains("The piece was measured anew or left the rack since this plan was made, so it is not drawn.")
                .contains("The design was changed or left since this plan was made, so its joint is not drawn.");
    }

    @Test
    void printsNamesInAnyScript() throws Exception {
        PlanOnPaper plan = new RandomPlans(8).next();
        Plan.Pairing p = plan.plan().pairings().get(0);
        assertThat(new String(
                        CutSheets.pdf(plan, PaperSize.A4, Correction.NONE),
                        0,
                        5,
                        java.nio.charset.StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-");
        try (Sheets sheets = new Sheets(PaperSize.A4, Correction.NONE, "Ağaç \u0000 木 🪵 Łódź")) {
            Sheet sheet = sheets.upright();
            sheet.text(new Spot(0, 10), 4, Sheet.Align.LEFT, "Ağaç \u0000 木 🪵 Łódź " + p.design());
            Read read = PrintedMeasures.of(sheets.bytes());
            assertThat(read.texts().get(0)).startsWith("Ağaç □ □ □ Łódź");
        }
    }

    private static double measured(Read read, String figure) {
        return read.measures().stream()
                .filter(m -> m.figure().equals(figure))
                .findFirst()
                .orElseThrow()
                .length();
    }

    /** Every dimension has the figure of a length of the plan and is as long as that length at the scale above it. */
    private static int check(Read read, List<Double> lengths, Correction correction, String what) {
        for (Measure m : read.measures()) {
            double onPaper = m.length() / correction.factor();
            if (m.figure().equals("100 mm")) {
                assertThat(onPaper).as(what).isCloseTo(100, within(OFF));
            } else if (m.figure().equals("4 in")) {
                assertThat(onPaper).as(what).isCloseTo(101.6, within(OFF));
            } else {
                Matcher scale = SCALE.matcher(m.scale());
                assertThat(scale.find())
                        .as(what + ": a scale stands above " + m)
                        .isTrue();
                double times = Double.parseDouble(scale.group(1));
                String figure = m.figure().replaceFirst("^[A-Za-z]+ ", "");
                assertThat(lengths.stream()
                                .anyMatch(v ->
                                        MM.number(Length.nearestMm(Math.abs(v))).equals(figure)
                                                && Math.abs(onPaper - Math.abs(v) / times) <= OFF))
                        .as(what + ": " + m + " is a length of the plan")
                        .isTrue();
            }
        }
        return read.measures().size();
    }

    private static List<String> longSides(PlanOnPaper plan) {
        return plan.plan().pairings().stream()
                .flatMap(p -> List.of(p.neck(), p.head()).stream())
                .map(p -> MM.number(p.longSide()))
                .toList();
    }

    /** What the sheets may say, in millimetres: the plan's sides and sizes, and the joint's lengths worked out once more. */
    private static List<Double> lengthsOf(PlanOnPaper plan) {
        List<Double> all = new ArrayList<>();
        for (LaidOut laid : plan.cutPieces()) {
            all.add(laid.layout().length().mm());
            all.add(laid.layout().width().mm());
            laid.parts().forEach(x -> all.add(x.part().longSide().mm()));
        }
        for (Plan.Pairing p : plan.plan().pairings()) {
            JointInput in =
                    Objects.requireNonNull(plan.designs().get(p.design())).jointInput(p.arrangement(), p.angle());
            double a = in.angle().radians();
            double t = in.neckThickness().mm();
            double h = in.headThickness().mm();
            double n = in.neckLength().mm();
            double head = in.headLength().mm();
            double w = in.neckWidth().mm();
            double hw = in.headWidth().mm();
            double seam = t / Math.sin(a);
            double taken = h / Math.sin(a);
            all.addAll(List.of(
                    t,
                    h,
                    n,
                    head,
                    w,
                    hw,
                    seam,
                    taken,
                    head - seam,
                    n - taken,
                    (hw - w) / 2,
                    n + t / Math.tan(a),
                    n - taken + t / Math.tan(a),
                    head - seam + h / Math.tan(a),
                    head + h / Math.tan(a),
                    t / Math.tan(a) - taken,
                    head + h / Math.tan(a) - seam));
            all.add(Math.min(p.neck().width().mm(), p.head().width().mm()));
        }
        return all;
    }

    @Test
    void writesSamplesToLookAt() throws Exception {
        Path folder = Files.createDirectories(Path.of("target", "paper"));
        PlanOnPaper plan = new RandomPlans(11).next();
        Files.write(folder.resolve("cut-sheets.pdf"), CutSheets.pdf(plan, PaperSize.A4, Correction.NONE));
        Files.write(folder.resolve("jig.pdf"), JigTemplates.pdf(plan, PaperSize.LETTER, Correction.NONE));
        assertThat(folder.resolve("jig.pdf")).isNotEmptyFile();
    }
}
