package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;

/**
 * What is drawn, read back from the drawing and measured: outlines against polygons clipped by the JTS Topology Suite, every
 * dimension line against the number on it and the points it claims to measure. A point of a drawing is rounded to 0.001 mm.
 */
class DrawnGeometryTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double DRAWN = 0.003;
    /** A dimension shows tenths of a millimetre. */
    private static final double SHOWN = 0.05 + DRAWN;

    private record Line(Coordinate from, Coordinate to) {
        double length() {
            return from.distance(to);
        }

        Coordinate middle() {
            return new Coordinate((from.x + to.x) / 2, (from.y + to.y) / 2);
        }
    }

    /** A dimension line with its text, and for each end that is not broken off the line to what is measured. */
    private record Dimension(Line line, List<Line> extensions, List<Line> ticks, JointDrawing.Label label) {
        double value() {
            return Double.parseDouble(label.value());
        }
    }

    static Stream<ScarfJoint> joints() {
        return Arrays.stream(Arrangement.values())
                .flatMap(a -> Stream.of(
                        input(a, 10, 20, 15, 457, 180, 60, 78),
                        input(a, 7, 25.4, 15, 640, 260, 60, 60),
                        input(a, 17, 22, 12, 90, 150, 64, 52),
                        input(a, 17, 14, 30, 457, 180, 45, 78),
                        input(a, 13, 20, 20, 330, 200, 50, 92)))
                .filter(in -> ScarfJoint.refusals(in).isEmpty())
                .map(ScarfJoint::of);
    }

    private static JointInput input(
            Arrangement a, double angle, double t, double h, double neck, double head, double w, double outline) {
        return new JointInput(
                a,
                new Angle((int) Math.round(angle * 1000)),
                Length.nearestMm(t),
                Length.nearestMm(h),
                Length.nearestMm(neck),
                Length.nearestMm(head),
                Length.nearestMm(w),
                Length.nearestMm(outline));
    }

    static Stream<JointDrawing> drawings() {
        return joints().flatMap(j -> Stream.of(
                JointDrawing.side(j, LengthUnit.MM),
                JointDrawing.face(j, LengthUnit.MM),
                JointDrawing.back(j, LengthUnit.MM)));
    }

    @ParameterizedTest
    @MethodSource("joints")
    void theSideViewShowsTheClippedPieces(ScarfJoint joint) {
        JointDrawing side = JointDrawing.side(joint, LengthUnit.MM);
        ClippedJoint clipped = new ClippedJoint(joint.input());
        Polygon neck = area(side, "d-neck");
        Envelope drawn = neck.getEnvelopeInternal();
        Geometry whole = clipped.neck.intersection(
                FACTORY.toGeometry(new Envelope(drawn.getMinX(), drawn.getMaxX() + 1, -1000, 1000)));

        assertThat(neck.symDifference(whole).getArea()).isLessThan(DRAWN * neck.getLength());
        Polygon head = area(side, "d-head");
        assertThat(head.symDifference(clipped.head).getArea()).isLessThan(DRAWN * head.getLength());
        Line glue = lines(side, "d-glue").get(0);
        LineString face = FACTORY.createLineString(new Coordinate[] {glue.from(), glue.to()});
        assertThat(clipped.neck.getBoundary().distance(face.getStartPoint())).isLessThan(DRAWN);
        assertThat(clipped.head.getBoundary().distance(face.getEndPoint())).isLessThan(DRAWN);
        assertThat(glue.length()).isCloseTo(clipped.glueFace(), within(2 * DRAWN));
    }

    /**
     * By hand, at 10° with 20 and 15 mm: the joint reaches 15 / sin 10° = 86.38 behind the nut at most, a quarter of 180 + 86.38
     * is kept beside it, and a letter is 1/52 of all that.
     */
    @Test
    void aLongNeckIsBrokenOffAndAShortOneIsNot() {
        JointDrawing side = JointDrawing.side(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 10, 20, 15, 457, 180, 60, 78)), LengthUnit.MM);
        double left = -(86.382 + 0.25 * (180 + 86.382));

        assertThat(area(side, "d-neck").getEnvelopeInternal().getMinX()).isCloseTo(left, within(0.01));
        assertThat(Double.parseDouble(side.fontSize())).isCloseTo((180 - left) / 52, within(0.001));
        List<Coordinate> edge = points(path(side, "d-thin").d());
        assertThat(edge).hasSize(4);
        close(edge.get(0), new Coordinate(left, 22), 0.01);
        close(edge.get(1), new Coordinate(left + 2.5, 11), 0.01);
        close(edge.get(2), new Coordinate(left - 2.5, 9), 0.01);
        close(edge.get(3), new Coordinate(left, -2), 0.01);
        List<Coordinate> paper = points(side.areas().stream()
                .filter(a -> a.style().equals("d-paper"))
                .findFirst()
                .orElseThrow()
                .points());
        close(paper.get(0), new Coordinate(left - 1, 21), 0.01);
        close(paper.get(1), new Coordinate(left, 21), 0.01);
        assertThat(paper.subList(2, 4)).isEqualTo(edge.subList(1, 3));
        close(paper.get(4), new Coordinate(left, -1), 0.01);
        close(paper.get(5), new Coordinate(left - 3.5, -1), 0.01);
        assertThat(side.description()).endsWith("The neck is broken off toward the heel.");

        JointDrawing whole = JointDrawing.side(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 17, 22, 12, 90, 150, 64, 52)), LengthUnit.MM);
        assertThat(area(whole, "d-neck").getEnvelopeInternal().getMinX()).isEqualTo(-90);
        assertThat(whole.areas()).extracting(JointDrawing.Area::style).doesNotContain("d-paper");
        assertThat(whole.paths()).extracting(JointDrawing.Path::style).doesNotContain("d-thin");
        assertThat(whole.description()).doesNotContain("broken");
        assertThat(dimensions(whole)).allSatisfy(d -> assertThat(d.extensions()).hasSize(2));

        // A neck so thin that the wave would be deeper than a third of it has a flatter one.
        JointDrawing thin = JointDrawing.side(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 10, 6, 5, 457, 180, 60, 78)), LengthUnit.MM);
        double at = area(thin, "d-neck").getEnvelopeInternal().getMinX();
        assertThat(points(path(thin, "d-thin").d()).get(1).x - at).isCloseTo(1.0, within(DRAWN));
    }

    /** Underlaid: seam 20 / sin 10° = 115.175 from the nut; overlaid: under the fingerboard 15 / sin 10° = 86.382 behind it. */
    @Test
    void theFaceShowsTheSeamTheWingsAndTheWidths() {
        JointDrawing under = JointDrawing.face(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 10, 20, 15, 457, 180, 60, 78)), LengthUnit.MM);
        box(area(under, "d-neck"), -45, 115.175, -30, 30);
        box(area(under, "d-head"), 115.175, 180, -39, 39);
        List<Polygon> wings = areas(under, "d-wing");
        box(wings.get(0), 0, 115.175, 30, 39);
        box(wings.get(1), 0, 115.175, -39, -30);
        Line glue = lines(under, "d-glue").get(0);
        close(glue.from(), new Coordinate(115.175, -30), 0.01);
        close(glue.to(), new Coordinate(115.175, 30), 0.01);
        assertThat(Double.parseDouble(under.fontSize())).isCloseTo(225.0 / 52, within(0.001));
        assertThat(under.title()).isEqualTo("Front of the head, underlaid");
        assertThat(under.description())
                .isEqualTo(
                        "The head’s front face from above. Neck wood 60.0 mm wide runs from the nut to the seam, 115.2 mm "
                                + "from the nut; head wood 78.0 mm wide from there to the tip, 180.0 mm from the nut. Two wings, each "
                                + "9.0 mm wide, fill the outline beside the neck wood.");

        JointDrawing over = JointDrawing.face(
                ScarfJoint.of(input(Arrangement.OVERLAID, 10, 20, 15, 457, 180, 60, 78)), LengthUnit.MM);
        box(area(over, "d-neck"), -(86.382 + 45), -86.382, -30, 30);
        box(area(over, "d-head"), -86.382, 180, -39, 39);
        glue = lines(over, "d-glue").get(0);
        close(glue.from(), new Coordinate(-86.382, -30), 0.01);
        close(glue.to(), new Coordinate(-86.382, 30), 0.01);
        assertThat(over.title()).isEqualTo("Front of the head, overlaid");
        assertThat(over.description())
                .isEqualTo(
                        "The head’s front face from above. The head piece, 78.0 mm wide, reaches from 86.4 mm behind the nut, "
                                + "where the fingerboard covers its seam, to the tip, 180.0 mm from the nut. No seam and no wings on the "
                                + "face.");

        JointDrawing narrow = JointDrawing.face(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 17, 22, 12, 90, 300, 64, 52)), LengthUnit.MM);
        assertThat(areas(narrow, "d-wing")).isEmpty();
        assertThat(narrow.description()).endsWith("No wings are needed.");
        assertThat(area(narrow, "d-neck").getEnvelopeInternal().getMinX())
                .as("a quarter of the head beside it")
                .isEqualTo(-75);
        JointDrawing stub = JointDrawing.face(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 17, 22, 12, 40, 300, 64, 52)), LengthUnit.MM);
        assertThat(area(stub, "d-neck").getEnvelopeInternal().getMinX())
                .as("no more neck than there is")
                .isEqualTo(-40);
    }

    /** The joint ends 20·cot 10° − 15 / sin 10° = 27.043 past the nut; 149.895 of head wood from there to the tip. */
    @Test
    void theBackShowsTheEndOfTheJoint() {
        JointDrawing back = JointDrawing.back(
                ScarfJoint.of(input(Arrangement.UNDERLAID, 10, 20, 15, 457, 180, 60, 78)), LengthUnit.MM);
        box(area(back, "d-neck"), -45, 27.043, -30, 30);
        box(area(back, "d-head"), 27.043, 27.043 + 149.895, -39, 39);
        List<Polygon> wings = areas(back, "d-wing");
        box(wings.get(0), 0, 27.043, 30, 39);
        box(wings.get(1), 0, 27.043, -39, -30);
        Line glue = lines(back, "d-glue").get(0);
        close(glue.from(), new Coordinate(27.043, -30), 0.01);
        close(glue.to(), new Coordinate(27.043, 30), 0.01);
        assertThat(Double.parseDouble(back.fontSize())).isCloseTo((45 + 27.043 + 149.895) / 52, within(0.001));

        // 14·cot 17° − 30 / sin 17° = −56.82: the joint ends behind the nut, and a quarter of the head's back beside it
        // is shown.
        ScarfJoint thick = ScarfJoint.of(input(Arrangement.OVERLAID, 17, 14, 30, 457, 180, 45, 78));
        double end = 14 / Math.tan(Math.toRadians(17)) - 30 / Math.sin(Math.toRadians(17));
        JointDrawing heelward = JointDrawing.back(thick, LengthUnit.MM);
        Envelope head = area(heelward, "d-head").getEnvelopeInternal();
        assertThat(head.getMinX()).isCloseTo(end, within(DRAWN));
        assertThat(area(heelward, "d-neck").getEnvelopeInternal().getMinX())
                .isCloseTo(end - 0.25 * head.getWidth(), within(0.01));
    }

    @ParameterizedTest
    @MethodSource("drawings")
    void everyDimensionIsAsLongAsItSaysBetweenPointsThatAreThere(JointDrawing drawing) {
        double font = Double.parseDouble(drawing.fontSize());
        List<Dimension> dimensions = dimensions(drawing);
        List<Coordinate> there = features(drawing);
        assertThat(dimensions).hasSizeGreaterThanOrEqualTo(4);
        for (Dimension d : dimensions) {
            String what = drawing.title() + ": " + d.label();
            if (d.extensions().size() == 2) {
                assertThat(d.line().length()).as(what).isCloseTo(Math.abs(d.value()), within(SHOWN));
            } else {
                assertThat(d.line().length())
                        .as("broken off, so shorter: " + what)
                        .isLessThan(d.value());
            }
            double wayX = (d.line().to().x - d.line().from().x) / d.line().length();
            double wayY = (d.line().to().y - d.line().from().y) / d.line().length();
            for (Line e : d.extensions()) {
                double outX = (e.to().x - e.from().x) / e.length();
                double outY = (e.to().y - e.from().y) / e.length();
                assertThat(wayX * outX + wayY * outY).as("square: " + what).isCloseTo(0, within(0.002));
                Coordinate measured = new Coordinate(e.from().x - outX * 0.6 * font, e.from().y - outY * 0.6 * font);
                assertThat(there.stream()
                                .mapToDouble(p -> p.distance(measured))
                                .min()
                                .orElseThrow())
                        .as("something is there to measure: " + what)
                        .isLessThan(0.02);
                Coordinate end = new Coordinate(e.to().x - outX * 0.6 * font, e.to().y - outY * 0.6 * font);
                assertThat(Math.min(
                                end.distance(d.line().from()),
                                end.distance(d.line().to())))
                        .as("it leads to the line: " + what)
                        .isLessThan(0.02);
                assertThat(e.length()).as("clear of the wood: " + what).isGreaterThan(1.5 * font);
            }
            assertThat(d.ticks()).hasSameSizeAs(d.extensions()).allSatisfy(t -> {
                assertThat(t.length()).isCloseTo(Math.sqrt(2) * font, within(0.01));
                assertThat(Math.min(
                                t.middle().distance(d.line().from()),
                                t.middle().distance(d.line().to())))
                        .isLessThan(0.01);
                double along = (t.to().x - t.from().x) * wayX + (t.to().y - t.from().y) * wayY;
                assertThat(Math.abs(along) / t.length()).isCloseTo(Math.sqrt(0.5), within(0.005));
            });
        }
    }

    @ParameterizedTest
    @MethodSource("drawings")
    void aTextStandsOnItsLineOrWhereItHasNoRoomBesideIt(JointDrawing drawing) {
        double font = Double.parseDouble(drawing.fontSize());
        for (Dimension d : dimensions(drawing)) {
            JointDrawing.Label label = d.label();
            Coordinate at = at(label);
            Line line = d.line();
            double wayX = (line.to().x - line.from().x) / line.length();
            double wayY = (line.to().y - line.from().y) / line.length();
            double fromX = at.x - line.middle().x;
            double fromY = at.y - line.middle().y;
            double along = fromX * wayX + fromY * wayY;
            double above = (fromY * wayX - fromX * wayY) * Math.signum(wayX);
            if (Math.abs(wayX) < 1e-6) {
                boolean outOnTheLeft =
                        d.extensions().get(0).to().x < d.extensions().get(0).from().x;
                assertThat(label.turn()).isNull();
                assertThat(label.anchor()).isEqualTo(outOnTheLeft ? "end" : "start");
                assertThat(fromX).isCloseTo(outOnTheLeft ? -0.5 * font : 0.5 * font, within(0.01));
                assertThat(fromY).isCloseTo(-0.4 * font, within(0.01));
            } else if (label.anchor().equals("middle")) {
                assertThat(along).as(label.toString()).isCloseTo(0, within(0.01));
                assertThat(above).isCloseTo(0.45 * font, within(0.01));
                assertThat(width(label, font)).as("it has room").isLessThan(line.length());
            } else {
                assertThat(label.anchor()).isEqualTo("end");
                assertThat(Math.abs(along)).isCloseTo(line.length() / 2 + 0.9 * font, within(0.01));
                assertThat(above).isCloseTo(-0.35 * font, within(0.01));
                assertThat(width(label, font)).as("it had no room").isGreaterThanOrEqualTo(line.length());
            }
            if (Math.abs(wayX) >= 1e-6) {
                double turned = -Math.toDegrees(Math.atan(wayY / wayX));
                if (Math.abs(turned) < 1e-6) {
                    assertThat(label.turn()).isNull();
                } else {
                    List<Double> turn = numbers(String.valueOf(label.turn()));
                    assertThat(turn.get(0)).isCloseTo(turned, within(0.01));
                    assertThat(turn.subList(1, 3))
                            .containsExactly(Double.parseDouble(label.x()), Double.parseDouble(label.y()));
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("drawings")
    void dimensionsOfOneSideStandInRowsAndNeverOnEachOther(JointDrawing drawing) {
        double font = Double.parseDouble(drawing.fontSize());
        List<Dimension> dimensions = dimensions(drawing);
        for (int i = 0; i < dimensions.size(); i++) {
            for (int j = 0; j < i; j++) {
                Line one = dimensions.get(i).line();
                Line other = dimensions.get(j).line();
                LineString a = string(one);
                LineString b = string(other);
                // Two that follow each other on one row share an end.
                boolean follow = Stream.of(one.from(), one.to())
                        .anyMatch(p -> Math.min(p.distance(other.from()), p.distance(other.to())) < 0.01);
                assertThat(follow || a.distance(b) > 0.9 * font || !parallel(a, b))
                        .as(dimensions.get(i).label() + " and "
                                + dimensions.get(j).label())
                        .isTrue();
            }
        }
    }

    /** The paper is as large as what is drawn on it and a margin of 0.6 of a letter, whatever text grows to on a phone. */
    @ParameterizedTest
    @MethodSource("drawings")
    void thePaperIsAsLargeAsWhatIsOnIt(JointDrawing drawing) {
        double font = Double.parseDouble(drawing.fontSize());
        Envelope drawn = new Envelope();
        Stream.concat(
                        drawing.areas().stream().map(JointDrawing.Area::points),
                        drawing.paths().stream().map(JointDrawing.Path::d))
                .flatMap(text -> points(text).stream())
                .forEach(drawn::expandToInclude);
        for (JointDrawing.Label label : drawing.labels()) {
            double width = width(label, font);
            double shift = label.anchor().equals("middle")
                    ? -width / 2
                    : label.anchor().equals("end") ? -width : 0;
            double turn = label.turn() == null
                    ? 0
                    : -Math.toRadians(numbers(label.turn()).get(0));
            for (double along : new double[] {shift, shift + width}) {
                double x = at(label).x + along * Math.cos(turn);
                double y = at(label).y + along * Math.sin(turn);
                drawn.expandToInclude(x, y);
                drawn.expandToInclude(x, y + 2 * font);
            }
        }
        // The letter's size is rounded to 0.001, and a text is up to fifty of them wide.
        List<Double> box = numbers(drawing.viewBox());
        double edge = 0.6 * font;
        assertThat(box.get(0)).isCloseTo(drawn.getMinX() - edge, within(0.05));
        assertThat(box.get(1)).isCloseTo(-drawn.getMaxY() - edge, within(0.05));
        assertThat(box.get(2)).isCloseTo(drawn.getWidth() + 2 * edge, within(0.05));
        assertThat(box.get(3)).isCloseTo(drawn.getHeight() + 2 * edge, within(0.05));
    }

    /** Every 3.2 mm from edge to edge, along the wood; across a wing at 45°. */
    @ParameterizedTest
    @MethodSource("drawings")
    void grainRunsFromEdgeToEdgeInItsOwnWood(JointDrawing drawing) {
        List<JointDrawing.Path> grains = drawing.paths().stream()
                .filter(p -> p.style().startsWith("d-grain"))
                .toList();
        assertThat(grains).isNotEmpty();
        int wings = areas(drawing, "d-wing").size();
        assertThat(grains).hasSize(2 + wings);
        for (JointDrawing.Path grain : grains) {
            List<Coordinate> ends = points(grain.d());
            boolean head = grain.style().contains("broken");
            List<Polygon> homes = Stream.of(head ? "d-head" : "d-neck", "d-wing")
                    .filter(style -> !head || style.equals("d-head"))
                    .flatMap(style -> areas(drawing, style).stream())
                    .toList();
            LineString first = FACTORY.createLineString(new Coordinate[] {ends.get(0), ends.get(1)});
            Polygon home = homes.stream()
                    .filter(p ->
                            p.buffer(0.01).contains(first) && p.getBoundary().distance(first.getStartPoint()) < 0.01)
                    .findFirst()
                    .orElseThrow();
            double wayX = (ends.get(1).x - ends.get(0).x) / first.getLength();
            double wayY = (ends.get(1).y - ends.get(0).y) / first.getLength();
            double low = Double.MAX_VALUE;
            double high = -Double.MAX_VALUE;
            for (Coordinate c : home.getCoordinates()) {
                low = Math.min(low, c.y * wayX - c.x * wayY);
                high = Math.max(high, c.y * wayX - c.x * wayY);
            }
            List<Double> offsets = new ArrayList<>();
            for (int i = 0; i < ends.size(); i += 2) {
                LineString line = FACTORY.createLineString(new Coordinate[] {ends.get(i), ends.get(i + 1)});
                assertThat(home.getBoundary().distance(line.getStartPoint())).isLessThan(0.01);
                assertThat(home.getBoundary().distance(line.getEndPoint())).isLessThan(0.01);
                assertThat(home.buffer(0.01).contains(line)).isTrue();
                assertThat(line.getLength()).isGreaterThan(0.49);
                offsets.add(ends.get(i).y * wayX - ends.get(i).x * wayY);
            }
            offsets.sort(null);
            assertThat(offsets.get(0)).isCloseTo(low + 1.6, within(0.01));
            for (int i = 1; i < offsets.size(); i++) {
                assertThat(offsets.get(i) - offsets.get(i - 1)).isCloseTo(3.2, within(0.01));
            }
            assertThat(high - offsets.get(offsets.size() - 1))
                    .as("up to the far edge")
                    .isLessThan(3.2 + 1.6);
        }
    }

    @ParameterizedTest
    @MethodSource("joints")
    void theAngleIsDrawnAsWhatItIs(ScarfJoint joint) {
        JointDrawing side = JointDrawing.side(joint, LengthUnit.MM);
        double font = Double.parseDouble(side.fontSize());
        double radius = joint.input().headLength().mm() + 3.4 * font;
        Coordinate nut = new Coordinate(0, joint.input().neckThickness().mm());
        List<Coordinate> arc = side.paths().stream()
                .map(p -> points(p.d()))
                .filter(p -> p.size() == 13)
                .findFirst()
                .orElseThrow();
        assertThat(arc).allSatisfy(p -> assertThat(p.distance(nut)).isCloseTo(radius, within(0.01)));
        close(arc.get(0), new Coordinate(radius, nut.y), 0.01);
        double degrees = Math.toDegrees(Math.atan2(nut.y - arc.get(12).y, arc.get(12).x));
        assertThat(degrees).isCloseTo(joint.input().angle().toDegrees().doubleValue(), within(0.001));
        Line level = lines(side, "d-axis").get(0);
        close(level.from(), nut, DRAWN);
        close(level.to(), new Coordinate(radius + font, nut.y), 0.01);
        JointDrawing.Label label = side.labels().get(side.labels().size() - 1);
        assertThat(label.value()).isEqualTo(joint.input().angle().toString());
        assertThat(label.anchor()).isEqualTo("start");
        close(at(label), new Coordinate(arc.get(6).x + 0.6 * font, arc.get(6).y - 0.4 * font), 0.01);

        Polygon ink = area(side, "d-ink");
        box(ink, -0.5 * font, 0, nut.y, nut.y + font);
        JointDrawing.Label at = side.labels().get(0);
        assertThat(at.value()).isEqualTo("nut");
        close(at(at), new Coordinate(-0.75 * font, nut.y + 0.35 * font), 0.01);
    }

    @ParameterizedTest
    @MethodSource("joints")
    void theNutCrossesFaceAndBack(ScarfJoint joint) {
        double edge = Math.max(
                        joint.input().neckWidth().mm(),
                        joint.input().headWidth().mm())
                / 2;
        for (JointDrawing drawing :
                List.of(JointDrawing.face(joint, LengthUnit.MM), JointDrawing.back(joint, LengthUnit.MM))) {
            double font = Double.parseDouble(drawing.fontSize());
            Line nut = lines(drawing, "d-axis").get(0);
            close(nut.from(), new Coordinate(0, -edge - 0.8 * font), 0.01);
            close(nut.to(), new Coordinate(0, edge + 0.8 * font), 0.01);
            JointDrawing.Label label = drawing.labels().stream()
                    .filter(l -> l.value().endsWith("nut"))
                    .findFirst()
                    .orElseThrow();
            close(at(label), new Coordinate(0, edge + font), 0.01);
            assertThat(label.anchor()).isEqualTo("end");
        }
    }

    /** A letter is 0.56 of the text's size wide; text grows to twice its size without the word, to 1.35 of it with the word. */
    @Test
    void aTextKnowsHowWideItMayGrow() {
        Pen.Text longWord = new Pen.Text("A", "neck front", "457.0");
        assertThat(longWord.widestOn(10)).isCloseTo((1 + 1 + 5 + 1 + 10) * 1.35 * 0.56 * 10, within(1e-9));
        assertThat(longWord.withoutWord().widestOn(10)).isCloseTo((1 + 1 + 5) * 2 * 0.56 * 10, within(1e-9));
        assertThat(new Pen.Text("A", "is", "457.0").widestOn(10))
                .as("the narrow figure's text is the wider")
                .isCloseTo((1 + 1 + 5) * 2 * 0.56 * 10, within(1e-9));
        assertThat(new Pen.Text(null, "under the fingerboard", "86.4")
                        .withoutWord()
                        .word())
                .isEqualTo("under the fingerboard");
        assertThat(longWord.withoutWord()).isEqualTo(new Pen.Text("A", null, "457.0"));
    }

    /** Dimension lines in the order they are drawn: each end's line and tick, the line itself, and a label with a number. */
    private static List<Dimension> dimensions(JointDrawing drawing) {
        List<JointDrawing.Label> numbered = drawing.labels().stream()
                .filter(l -> l.value().matches("-?[0-9.]+"))
                .toList();
        List<Dimension> found = new ArrayList<>();
        List<Line> extensions = new ArrayList<>();
        List<Line> ticks = new ArrayList<>();
        List<JointDrawing.Path> paths = drawing.paths();
        for (int i = 0; i < paths.size(); i++) {
            List<Coordinate> p = points(paths.get(i).d());
            if (!paths.get(i).style().equals("d-dim") || p.size() != 2) {
                continue;
            }
            Line line = new Line(p.get(0), p.get(1));
            if (i + 1 < paths.size() && paths.get(i + 1).style().equals("d-thick")) {
                List<Coordinate> tick = points(paths.get(i + 1).d());
                extensions.add(line);
                ticks.add(new Line(tick.get(0), tick.get(1)));
            } else {
                found.add(new Dimension(line, List.copyOf(extensions), List.copyOf(ticks), numbered.get(found.size())));
                extensions.clear();
                ticks.clear();
            }
        }
        assertThat(found).hasSameSizeAs(numbered);
        return found;
    }

    /** Corners of the wood, the nut, and where it crosses the widest edge. */
    private static List<Coordinate> features(JointDrawing drawing) {
        List<Coordinate> all = new ArrayList<>();
        Envelope wood = new Envelope();
        for (JointDrawing.Area area : drawing.areas()) {
            if (List.of("d-neck", "d-head", "d-wing").contains(area.style())) {
                all.addAll(points(area.points()));
                points(area.points()).forEach(wood::expandToInclude);
            }
        }
        double thickness = area(drawing, "d-neck").getEnvelopeInternal().getMaxY();
        all.add(new Coordinate(0, thickness));
        all.add(new Coordinate(0, 0));
        if (!drawing.title().contains("from the side")) {
            double edge = wood.getMaxY();
            List<Double> corners = all.stream().map(c -> c.x).distinct().toList();
            corners.forEach(x -> all.addAll(List.of(new Coordinate(x, edge), new Coordinate(x, -edge))));
        }
        return all;
    }

    private static double width(JointDrawing.Label label, double font) {
        return new Pen.Text(label.letter(), label.word(), label.value()).widestOn(font);
    }

    private static boolean parallel(LineString a, LineString b) {
        double ax = a.getEndPoint().getX() - a.getStartPoint().getX();
        double ay = a.getEndPoint().getY() - a.getStartPoint().getY();
        double bx = b.getEndPoint().getX() - b.getStartPoint().getX();
        double by = b.getEndPoint().getY() - b.getStartPoint().getY();
        return Math.abs(ax * by - ay * bx) < 1e-3 * a.getLength() * b.getLength();
    }

    private static LineString string(Line line) {
        return FACTORY.createLineString(new Coordinate[] {line.from(), line.to()});
    }

    private static void box(Polygon polygon, double left, double right, double bottom, double top) {
        assertThat(polygon.getArea())
                .as("a rectangle")
                .isCloseTo(polygon.getEnvelope().getArea(), within(0.01));
        Envelope e = polygon.getEnvelopeInternal();
        close(new Coordinate(e.getMinX(), e.getMinY()), new Coordinate(left, bottom), 0.01);
        close(new Coordinate(e.getMaxX(), e.getMaxY()), new Coordinate(right, top), 0.01);
    }

    private static void close(Coordinate actual, Coordinate expected, double by) {
        assertThat(actual.distance(expected)).as("%s from %s", actual, expected).isLessThan(by);
    }

    private static Coordinate at(JointDrawing.Label label) {
        return new Coordinate(Double.parseDouble(label.x()), -Double.parseDouble(label.y()));
    }

    private static Polygon area(JointDrawing drawing, String style) {
        return areas(drawing, style).get(0);
    }

    private static List<Polygon> areas(JointDrawing drawing, String style) {
        return drawing.areas().stream()
                .filter(a -> a.style().equals(style))
                .map(a -> {
                    List<Coordinate> ring = new ArrayList<>(points(a.points()));
                    ring.add(ring.get(0));
                    return FACTORY.createPolygon(ring.toArray(new Coordinate[0]));
                })
                .toList();
    }

    private static JointDrawing.Path path(JointDrawing drawing, String style) {
        return drawing.paths().stream()
                .filter(p -> p.style().equals(style))
                .findFirst()
                .orElseThrow();
    }

    private static List<Line> lines(JointDrawing drawing, String style) {
        return drawing.paths().stream()
                .filter(p -> p.style().equals(style))
                .map(p -> points(p.d()))
                .map(p -> new Line(p.get(0), p.get(1)))
                .toList();
    }

    /** Turned over: a drawing counts y down. */
    private static List<Coordinate> points(String text) {
        List<Double> numbers = numbers(text);
        List<Coordinate> points = new ArrayList<>();
        for (int i = 0; i < numbers.size(); i += 2) {
            points.add(new Coordinate(numbers.get(i), -numbers.get(i + 1)));
        }
        return points;
    }

    private static List<Double> numbers(String text) {
        return Arrays.stream(text.split("[^-0-9.]+"))
                .filter(s -> !s.isEmpty())
                .map(Double::parseDouble)
                .toList();
    }
}
