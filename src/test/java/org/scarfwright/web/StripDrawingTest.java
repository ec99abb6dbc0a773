package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.scarfwright.measure.Length;
import org.scarfwright.web.Pen.Point;
import org.scarfwright.web.Strip.Band;
import org.scarfwright.web.Strip.Cut;
import org.scarfwright.web.Strip.Flaw;
import org.scarfwright.web.Strip.Lane;
import org.scarfwright.web.Strip.Part;
import org.scarfwright.web.Strip.Rest;
import org.scarfwright.web.Strip.Rings;
import org.scarfwright.web.StripDrawing.Scale;

/** The drawing is read back from its path data and measured with polygons of the JTS geometry library. */
class StripDrawingTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");
    private static final Locale USUAL = Locale.getDefault();

    @AfterEach
    void usualLocale() {
        Locale.setDefault(USUAL);
    }

    private static Length mm(double mm) {
        return Length.nearestMm(mm);
    }

    private static Strip blank(double length, double width, double thickness) {
        return new Strip(
                "K7M",
                mm(length),
                mm(width),
                mm(thickness),
                List.of(new Band(new WoodLook(1, 1), mm(width), Rings.FLAT)),
                Length.ZERO,
                Length.ZERO,
                Length.ZERO,
                Length.ZERO,
                List.of(),
                List.of());
    }

    private static List<String> paths(StripDrawing drawing, String look) {
        return drawing.strokes().stream()
                .filter(s -> List.of(s.look().split(" ", -1)).contains(look))
                .map(StripDrawing.Stroke::data)
                .toList();
    }

    private static List<Double> numbers(String data) {
        List<Double> found = new ArrayList<>();
        Matcher m = NUMBER.matcher(data);
        while (m.find()) {
            found.add(Double.parseDouble(m.group()));
        }
        return found;
    }

    private static Polygon polygon(String data) {
        List<Double> n = numbers(data);
        Coordinate[] ring = new Coordinate[n.size() / 2 + 1];
        for (int i = 0; i < n.size() / 2; i++) {
            ring[i] = new Coordinate(n.get(2 * i), n.get(2 * i + 1));
        }
        ring[ring.length - 1] = ring[0];
        return GEOMETRY.createPolygon(ring);
    }

    @Test
    void drawsAPieceTrueToItsProportions() {
        StripDrawing drawing = StripDrawing.row(blank(700, 80, 25), new Scale(mm(700), mm(25)));
        List<Geometry> outlines = new ArrayList<>();
        paths(drawing, "d-thick").forEach(d -> outlines.add(polygon(d)));
        assertThat(outlines).hasSize(2);
        assertThat(outlines.get(0).getArea()).isCloseTo(700 * 80.0, within(0.01));
        assertThat(outlines.get(1).getArea()).as("end grain").isCloseTo(25 * 80.0, within(0.01));
        assertThat(outlines.get(1).getEnvelopeInternal().getMaxX())
                .as("end grain stands at the left")
                .isNegative();
    }

    @Test
    void drawsALongerPieceLongerOnTheSamePage() {
        List<Strip> strips = List.of(blank(700, 80, 25), blank(350, 60, 30));
        Scale scale = Scale.of(strips);
        double widest =
                numbers(StripDrawing.row(strips.get(0), scale).viewBox()).get(2);
        double other = numbers(StripDrawing.row(strips.get(1), scale).viewBox()).get(2);
        assertThat(other).isEqualTo(widest);
    }

    @Test
    void keepsPartsThatShareABevelOneKerfApart() {
        double thickness = 22;
        double angle = Math.toRadians(10);
        double run = thickness / Math.tan(angle);
        double kerfAlong = 3 / Math.sin(angle);
        double b = 460 + kerfAlong;
        Lane lane = new Lane(
                Length.ZERO,
                mm(72),
                List.of(
                        new Part("1", "1 neck", Length.ZERO, mm(460 + run), mm(run), false, mm(62), false),
                        new Part("2", "2 neck", mm(b), mm(b + run + 460), mm(run), true, mm(62), false)),
                List.of(new Cut(mm(460), mm(b + run), mm(run))),
                List.of());
        Strip strip = blank(1200, 80, 25).cutInto(List.of(lane), mm(thickness));
        StripDrawing drawing = StripDrawing.layout(strip, Scale.of(List.of(strip)));

        List<Polygon> sides = paths(drawing, "d-thick").stream()
                .map(StripDrawingTest::polygon)
                .filter(p -> p.getEnvelopeInternal().getMinY() > 80)
                .toList();
        assertThat(sides).hasSize(2);
        assertThat(sides.get(0).intersects(sides.get(1))).isFalse();
        // The saw takes its kerf square to the bevel, so that is how far the two faces stand apart.
        assertThat(sides.get(0).distance(sides.get(1))).isCloseTo(3, within(0.01));
        double shorter = 460 * thickness + run * thickness / 2;
        assertThat(sides.get(0).getArea()).isCloseTo(shorter, within(1.0));
        assertThat(sides.get(1).getArea()).isCloseTo(shorter, within(1.0));
    }

    @Test
    void keepsHatchesInsideWhatTheyFill() {
        Random random = new Random(20261130);
        for (int i = 0; i < 500; i++) {
            double x = random.nextDouble() * 1000;
            double y = random.nextDouble() * 100;
            double w = 1 + random.nextDouble() * 300;
            double h = 1 + random.nextDouble() * 80;
            List<Point> corners =
                    List.of(new Point(x, y), new Point(x + w, y), new Point(x + w, y + h), new Point(x, y + h));
            List<Double> n =
                    numbers(new Pen().hatch(corners, 3, random.nextBoolean()).data());
            Geometry room = polygon(new Pen().polygon(corners).data()).buffer(0.02);
            for (int k = 0; k + 3 < n.size(); k += 4) {
                Geometry line = GEOMETRY.createLineString(new Coordinate[] {
                    new Coordinate(n.get(k), n.get(k + 1)), new Coordinate(n.get(k + 2), n.get(k + 3))
                });
                assertThat(room.covers(line))
                        .as("%s in %s", line, room.getEnvelope())
                        .isTrue();
            }
            // Lines 3 mm apart along an axis cross a w × h block about (w + h) / 3 times.
            assertThat(n.size() / 4.0).isCloseTo((w + h) / 3, within(1.1));
        }
    }

    @Test
    void writesTheFactorItBendsWith() {
        Strip bent = new Strip(
                "K7M",
                mm(700),
                mm(80),
                mm(25),
                blank(700, 80, 25).bands(),
                mm(6),
                mm(2),
                Length.ZERO,
                Length.ZERO,
                List.of(),
                List.of());
        StripDrawing drawing = StripDrawing.piece(bent);
        assertThat(drawing.caption()).isEqualTo("Bends are drawn 3 times as large as they are.");
        assertThat(drawing.lettering())
                .extracting(StripDrawing.Lettering::text)
                .contains("bow 6.0 mm", "crook 2.0 mm", "700.0 × 80.0 × 25.0 mm");
        assertThat(drawing.description()).contains("Bow 6.0 mm").contains("Crook 2.0 mm");
    }

    @Test
    void tellsInWordsWhatLiesOnThePiece() {
        Lane lane = new Lane(
                Length.ZERO,
                mm(70),
                List.of(new Part("1", "1 head", mm(0), mm(200), mm(100), false, mm(70), true)),
                List.of(),
                List.of(new Rest(mm(203), mm(600), mm(70))));
        Strip strip = blank(700, 80, 25).cutInto(List.of(lane), mm(20));
        assertThat(StripDrawing.layout(strip, Scale.of(List.of(strip))).description())
                .isEqualTo("700.0 × 80.0 × 20.0 mm. 1 head from 0.0 to 200.0 mm. Rest from 203.0 to 600.0 mm.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "tr", "ar"})
    void writesTheSameDrawingUnderEveryLocale(String language) {
        Strip strip = new Strip(
                "K7M",
                mm(700.5),
                mm(80.25),
                mm(25),
                blank(700, 80.25, 25).bands(),
                mm(1.5),
                Length.ZERO,
                mm(5),
                Length.ZERO,
                List.of(new Flaw(mm(10), mm(20), mm(0), mm(9), true)),
                List.of());
        Locale.setDefault(Locale.ROOT);
        StripDrawing expected = StripDrawing.piece(strip);
        Locale.setDefault(Locale.forLanguageTag(language));
        assertThat(StripDrawing.piece(strip)).isEqualTo(expected);
    }

    @Test
    void drawsNoTwoWoodsAlike() throws Exception {
        Properties woods = new Properties();
        try (var in = WoodLook.class.getResourceAsStream("/wood-looks.properties")) {
            woods.load(in);
        }
        assertThat(woods).isNotEmpty();
        Set<WoodLook> looks = new HashSet<>();
        woods.stringPropertyNames()
                .forEach(wood ->
                        assertThat(looks.add(WoodLook.of(wood))).as(wood).isTrue());
    }
}
