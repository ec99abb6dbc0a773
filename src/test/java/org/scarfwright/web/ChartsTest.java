package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.scarfwright.web.StripDrawing.Stroke;

/** Charts read back from their paths: what is drawn is what was said, to half a hundredth of a unit. */
class ChartsTest {
    /** Path data has two places. */
    private static final Offset<Double> DRAWN = within(0.011);

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");

    private static List<double[]> points(String data) {
        List<Double> numbers = new ArrayList<>();
        Matcher m = NUMBER.matcher(data);
        while (m.find()) {
            numbers.add(Double.valueOf(m.group()));
        }
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i + 1 < numbers.size(); i += 2) {
            points.add(new double[] {numbers.get(i), numbers.get(i + 1)});
        }
        return points;
    }

    private static List<List<double[]>> strokes(StripDrawing drawing, String look) {
        return drawing.strokes().stream()
                .filter(s -> s.look().equals(look))
                .map(Stroke::data)
                .map(ChartsTest::points)
                .toList();
    }

    private static double[] centre(List<double[]> dot) {
        return new double[] {
            dot.stream().mapToDouble(p -> p[0]).average().orElseThrow(),
            dot.stream().mapToDouble(p -> p[1]).average().orElseThrow()
        };
    }

    @Test
    void theArmsOfAFlowAreAsHighAsTheirSharesAndFillTheWhole() {
        Random random = new Random(5);
        for (int round = 0; round < 200; round++) {
            int used = random.nextInt(9000);
            int rest = random.nextInt(10_000 - used);
            List<FlowChart.Arm> arms = List.of(
                    new FlowChart.Arm("Parts", used, ShareStrip.Kind.USED),
                    new FlowChart.Arm("Rests", rest, ShareStrip.Kind.REST),
                    new FlowChart.Arm("Kerf", 10_000 - used - rest, ShareStrip.Kind.WASTE));
            StripDrawing drawing = FlowChart.of("f", "Flow", "Input", arms);
            List<List<double[]>> bands = new ArrayList<>();
            drawing.strokes().stream()
                    .filter(s -> s.look().equals("d-thin") || s.look().equals("d-rest"))
                    .forEach(s -> bands.add(points(s.data())));
            List<FlowChart.Arm> shown =
                    arms.stream().filter(a -> a.hundredths() > 0).toList();
            assertThat(bands).hasSameSizeAs(shown);
            List<double[]> bar = strokes(drawing, "d-thick").get(0);
            double left = bar.get(0)[1];
            for (int i = 0; i < bands.size(); i++) {
                double high = 240.0 * shown.get(i).hundredths() / 10_000;
                List<double[]> band = bands.get(i);
                assertThat(band.get(0)[1]).as("no gap at the left").isCloseTo(left, DRAWN);
                assertThat(band.get(5)[1] - band.get(0)[1]).isCloseTo(high, within(0.021));
                assertThat(band.get(3)[1] - band.get(2)[1]).isCloseTo(high, within(0.021));
                left = band.get(5)[1];
            }
            assertThat(left).as("the whole").isCloseTo(bar.get(2)[1], DRAWN);
        }
    }

    @Test
    void wordsOfAFlowDoNotLieOnEachOther() {
        List<FlowChart.Arm> arms = new ArrayList<>();
        arms.add(new FlowChart.Arm("Parts", 9_960, ShareStrip.Kind.USED));
        for (int i = 0; i < 10; i++) {
            arms.add(new FlowChart.Arm("Cause " + i, 4, ShareStrip.Kind.WASTE));
        }
        List<Double> heights = FlowChart.of("f", "Flow", "Input", arms).lettering().stream()
                .filter(l -> l.text().endsWith("%"))
                .map(l -> Double.valueOf(l.y()))
                .toList();
        assertThat(heights).hasSize(11);
        for (int i = 1; i < heights.size(); i++) {
            assertThat(heights.get(i) - heights.get(i - 1)).isGreaterThanOrEqualTo(17.9);
        }
        assertThat(new FlowChart.Arm("Kerf", 1234, ShareStrip.Kind.WASTE).percent())
                .isEqualTo("12.34 %");
    }

    @Test
    void aTrendHasItsDotsWhereTheSharesAreAndALineForTheMiddle() {
        StripDrawing drawing = TrendChart.of(
                "t",
                "Trend",
                "",
                List.of(
                        new TrendChart.Mark("2026-W40", 0, 0.50, 0.50),
                        new TrendChart.Mark("2026-W41", 1, 0.70, 0.60),
                        new TrendChart.Mark("2026-W44", 4, 0.25, 0.50)));
        List<List<double[]>> dots = strokes(drawing, "d-dot");
        // 200 units high for 100 %, 400 units wide from 10 for four weeks; the weeks without cuts are a gap.
        assertThat(centre(dots.get(0))).containsExactly(new double[] {10, -100}, DRAWN);
        assertThat(centre(dots.get(1))).containsExactly(new double[] {110, -140}, DRAWN);
        assertThat(centre(dots.get(2))).containsExactly(new double[] {410, -50}, DRAWN);
        List<double[]> line = strokes(drawing, "d-thick").get(0);
        assertThat(line.get(1)).containsExactly(new double[] {110, -120}, DRAWN);
        assertThat(drawing.lettering())
                .extracting(StripDrawing.Lettering::text)
                .contains("100 %", "2026-W40", "2026-W44");
    }

    @Test
    void barsAreAsHighAsTheirValues() {
        StripDrawing drawing = BarChart.of(
                "b",
                "Bars",
                "",
                "",
                List.of(new BarChart.Bar("new", 30, "30", false), new BarChart.Bar("old", 12, "12", true)));
        // The top is 50, so 30 is 120 of 200 units.
        List<List<double[]>> outlines = strokes(drawing, "d-thin").stream()
                .filter(p -> p.size() == 4 && p.get(2)[0] > p.get(0)[0])
                .toList();
        assertThat(outlines.stream().map(p -> p.get(0)[1]).toList())
                .anySatisfy(y -> assertThat(y).isCloseTo(-120, DRAWN))
                .anySatisfy(y -> assertThat(y).isCloseTo(-48, DRAWN));
        assertThat(strokes(drawing, "d-waste")).hasSize(1);
        assertThat(BarChart.of("b", "Bars", "", "", List.of()).strokes()).isNotEmpty();
    }

    @Test
    void dotsThatAreAlikeLieOnTheSlantingLine() {
        DotChart chart = DotChart.of(
                "d",
                "Dots",
                new DotChart.Axes("planned", "real", "cm³"),
                "",
                List.of(new DotChart.Dot(100, 100, "/one", "One"), new DotChart.Dot(50, 200, "/two", "Two")));
        List<double[]> slant = strokes(chart.drawing(), "d-axis").get(0);
        assertThat(slant.get(1)).containsExactly(new double[] {420, -200}, DRAWN);
        // The ends are 200: half-way along and half-way up.
        assertThat(centre(points(chart.marks().get(0).data()))).containsExactly(new double[] {210, -100}, DRAWN);
        assertThat(centre(points(chart.marks().get(1).data()))).containsExactly(new double[] {105, -200}, DRAWN);
        assertThat(chart.marks()).extracting(DotChart.Mark::address).containsExactly("/one", "/two");
    }
}
