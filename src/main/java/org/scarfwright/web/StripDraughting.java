package org.scarfwright.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.web.Pen.Point;
import org.scarfwright.web.Strip.Band;
import org.scarfwright.web.Strip.Cut;
import org.scarfwright.web.Strip.Flaw;
import org.scarfwright.web.Strip.Lane;
import org.scarfwright.web.Strip.Part;
import org.scarfwright.web.Strip.Rest;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Scale;
import org.scarfwright.web.StripDrawing.Stroke;

/**
 * Draws one strip. x counts from the piece's left end, y downward from its far edge, both in millimetres of wood. The end
 * grain stands left of the face, on the same height, as a side view does on a workshop drawing.
 *
 * <p>Bevels all slant the same way in the edge view, rising to the right: a part with its bevel at the right has its long
 * side on top, one with its bevel at the left below. That is how two parts share one cut.
 */
final class StripDraughting {
    /** Warp below this does not show and is not drawn. */
    private static final double LEAST_WARP_MM = 0.25;

    /** A bent edge is drawn as large as this share of the length allows. */
    private static final double MOST_BEND = 0.035;

    private static final int[] FACTORS = {10, 5, 3, 2};

    /** Width of a figure's letter over its height, on average. */
    private static final double LETTER = 0.58;

    /** How much the style sheet enlarges lettering in the narrowest figure. */
    private static final double NARROW = 2.4;

    /** Room for a line of text below the drawing, over its height; in a narrow figure it reaches into the margin. */
    private static final double BELOW = 1.7;

    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    private final Strip strip;
    private final double length;
    private final double width;
    private final double thickness;
    private final double left;
    private final double viewWidth;
    private final double endX;

    /** A hundredth of the figure's width: spacing of hatches, gaps and lettering follow it. */
    private final double unit;

    private final double textSize;
    private final List<Stroke> strokes = new ArrayList<>();
    private final List<Lettering> lettering = new ArrayList<>();

    StripDraughting(Strip strip, Scale scale) {
        this.strip = strip;
        length = strip.length().mm();
        width = strip.width().mm();
        thickness = strip.thickness().mm();
        double longest = Math.max(scale.longest().mm(), length);
        double slot = Math.max(scale.thickest().mm(), thickness);
        double gap = longest * 0.02;
        double margin = longest * 0.003;
        endX = -gap - thickness;
        left = -gap - slot - margin;
        viewWidth = longest + margin - left;
        unit = viewWidth / 100;
        textSize = unit * 1.5;
    }

    StripDrawing row() {
        face(0);
        endGrain(0);
        return finish("row", -unit * 0.3, width + unit * 0.6, "");
    }

    StripDrawing piece() {
        int factor = warpFactor();
        double crook = drawn(strip.crook(), factor);
        double bow = drawn(strip.bow(), factor);
        double top = -unit * 0.5;
        if (crook > 0) {
            top = -crook - textSize * NARROW;
            letter(length / 2, -crook - unit * 0.6, "middle", "auto", "", "crook " + MM.print(strip.crook()));
        }
        face(crook);
        endGrain(0);
        double edgeTop = width + unit * 2.4 + bow;
        if (bow > 0) {
            edgeTop += textSize * NARROW;
            letter(length / 2, edgeTop - bow - unit * 0.6, "middle", "auto", "", "bow " + MM.print(strip.bow()));
        }
        edge(edgeTop, bow);
        double bottom = dimension(edgeTop + thickness + unit * 1.6);
        return finish("piece", top, bottom - top, warpCaption(factor, crook > 0 || bow > 0));
    }

    StripDrawing layout() {
        waste(rectangle(0, length, 0, width));
        strip.lanes().forEach(this::laneFace);
        outline(rectangle(0, length, 0, width));
        strip.flaws().forEach(f -> flaw(f, 0));
        endGrain(0);
        double y = width;
        for (Lane lane : strip.lanes()) {
            y += unit * 2;
            laneEdge(lane, y);
            y += thickness;
        }
        double bottom = dimension(y + unit * 1.6);
        return finish("layout", -unit * 0.5, bottom + unit * 0.5, "");
    }

    // Face and edge of the bare piece

    private void face(double crook) {
        double far = 0;
        for (Band band : fromFarEdge()) {
            double near = far + band.width().mm();
            wood(band.look(), bentBlock(0, length, far, near, crook));
            grain(band.look(), 0, length, far, near, crook);
            if (far > 0) {
                stroke("d-thin", new Pen().bent(0, length, far, crook));
            }
            far = near;
        }
        trims(0, width);
        strip.flaws().forEach(f -> flaw(f, 0));
        stroke("d-thick", bentBlock(0, length, 0, width, crook));
        if (crook > 0) {
            stroke("d-hidden d-dim", new Pen().line(0, width, length, width));
        }
    }

    private void edge(double top, double bow) {
        WoodLook look = strip.bands().get(0).look();
        wood(look, bentBlock(0, length, top, top + thickness, bow));
        grain(look, 0, length, top, top + thickness, bow);
        trims(top, top + thickness);
        stroke("d-thick", bentBlock(0, length, top, top + thickness, bow));
        if (bow > 0) {
            stroke("d-hidden d-dim", new Pen().line(0, top + thickness, length, top + thickness));
        }
    }

    private void trims(double top, double bottom) {
        double trimLeft = strip.trimLeft().mm();
        double trimRight = strip.trimRight().mm();
        if (trimLeft > 0) {
            waste(rectangle(0, trimLeft, top, bottom));
        }
        if (trimRight > 0) {
            waste(rectangle(length - trimRight, length, top, bottom));
        }
    }

    private void flaw(Flaw flaw, double top) {
        double x1 = flaw.from().mm();
        double x2 = Math.max(flaw.to().mm(), x1 + unit * 0.3);
        List<Point> corners = rectangle(
                x1,
                Math.min(x2, length),
                top + width - flaw.far().mm(),
                top + width - flaw.near().mm());
        Pen lines = new Pen().hatch(corners, unit * 0.7, false);
        if (flaw.structural()) {
            lines.hatch(corners, unit * 0.7, true);
        }
        stroke(flaw.structural() ? "d-flaw" : "d-flaw d-looks", lines.polygon(corners));
    }

    private void endGrain(double top) {
        double y = top;
        for (Band band : fromFarEdge()) {
            double h = band.width().mm();
            List<Point> block = rectangle(endX, endX + thickness, y, y + h);
            wood(band.look(), new Pen().polygon(block));
            rings(band, y, y + h);
            if (y > top) {
                stroke("d-thin", new Pen().line(endX, y, endX + thickness, y));
            }
            y += h;
        }
        outline(rectangle(endX, endX + thickness, top, top + width));
    }

    private void rings(Band band, double y1, double y2) {
        Pen pen = new Pen();
        double spacing = Math.max(unit * 0.9, 3);
        switch (band.rings()) {
            case QUARTER -> {
                for (double y = y1 + spacing; y < y2 - spacing / 4; y += spacing) {
                    pen.line(endX, y, endX + thickness, y);
                }
            }
            case RIFT -> pen.hatch(rectangle(endX, endX + thickness, y1, y2), spacing, true);
            case FLAT -> {
                double sag = Math.min(thickness, y2 - y1) * 0.3;
                for (double x = endX + spacing; x < endX + thickness - sag / 2; x += spacing) {
                    pen.command("M", x, y1).curve(x + sag, (y1 + y2) / 2, x, y2);
                }
            }
            case UNKNOWN -> {
                return;
            }
        }
        stroke("grain on-" + band.look().tone(), pen);
    }

    // What is cut from it

    private void laneFace(Lane lane) {
        for (Cut cut : lane.cuts()) {
            stroke(
                    "d-paper",
                    new Pen(),
                    rectangle(
                            cut.from().mm() + cut.run().mm(),
                            cut.to().mm(),
                            width - lane.near().mm() - lane.width().mm(),
                            width - lane.near().mm()));
        }
        for (Rest rest : lane.rests()) {
            double near = width - lane.near().mm();
            List<Point> block = rectangle(
                    rest.from().mm(), rest.to().mm(), near - rest.width().mm(), near);
            banded(block);
            stroke("d-rest", new Pen(), block);
            label(block, "rest", "rest");
        }
        for (Part part : lane.parts()) {
            List<Point> block = faceOf(part, lane);
            banded(block);
            stroke("d-thick", new Pen(), block);
            label(block, part.number(), part.label());
        }
        for (Part part : lane.parts()) {
            double hidden = part.bevelAtLeft()
                    ? part.from().mm()
                    : part.to().mm() - part.run().mm();
            double near = width - lane.near().mm();
            stroke("d-hidden", new Pen().line(hidden, near - part.width().mm(), hidden, near));
        }
    }

    private List<Point> faceOf(Part part, Lane lane) {
        double near = width - lane.near().mm();
        double from = part.bevelAtLeft()
                ? part.from().mm() + part.run().mm()
                : part.from().mm();
        return rectangle(from, part.to().mm(), near - part.width().mm(), near);
    }

    private void laneEdge(Lane lane, double top) {
        double bottom = top + thickness;
        List<Point> whole = rectangle(0, length, top, bottom);
        waste(whole);
        WoodLook look = bandAt(lane.near().mm()).look();
        for (Cut cut : lane.cuts()) {
            double run = cut.run().mm();
            stroke(
                    "d-paper",
                    new Pen(),
                    List.of(
                            new Point(cut.from().mm(), bottom),
                            new Point(cut.to().mm() - run, bottom),
                            new Point(cut.to().mm(), top),
                            new Point(cut.from().mm() + run, top)));
        }
        for (Rest rest : lane.rests()) {
            List<Point> block = rectangle(rest.from().mm(), rest.to().mm(), top, bottom);
            block(look, block);
            stroke("d-rest", new Pen(), block);
        }
        for (Part part : lane.parts()) {
            double from = part.from().mm();
            double to = part.to().mm();
            double run = part.run().mm();
            List<Point> side = part.bevelAtLeft()
                    ? List.of(
                            new Point(from, bottom),
                            new Point(from + run, top),
                            new Point(to, top),
                            new Point(to, bottom))
                    : List.of(
                            new Point(from, bottom),
                            new Point(from, top),
                            new Point(to, top),
                            new Point(to - run, bottom));
            block(look, side);
            stroke("d-thick", new Pen(), side);
        }
        outlineThin(whole);
    }

    private void block(WoodLook look, List<Point> corners) {
        wood(look, new Pen().polygon(corners));
        double y1 = corners.stream().mapToDouble(Point::y).min().orElse(0);
        double y2 = corners.stream().mapToDouble(Point::y).max().orElse(0);
        Pen lines = new Pen();
        for (double y : lineHeights(look, y1, y2)) {
            double[] span = spanAt(corners, y);
            if (span.length == 2) {
                lines.line(span[0], y, span[1], y);
            }
        }
        stroke(grainLook(look), lines);
    }

    /** A stretch of the face with the wood of every band it covers. */
    private void banded(List<Point> block) {
        double x1 = block.get(0).x();
        double x2 = block.get(1).x();
        double y1 = block.get(0).y();
        double y2 = block.get(2).y();
        double far = 0;
        for (Band band : fromFarEdge()) {
            double near = far + band.width().mm();
            double top = Math.max(far, y1);
            double bottom = Math.min(near, y2);
            if (bottom > top) {
                wood(band.look(), new Pen().polygon(rectangle(x1, x2, top, bottom)));
                grain(band.look(), x1, x2, top, bottom, 0);
                if (top > y1) {
                    stroke("d-thin", new Pen().line(x1, top, x2, top));
                }
            }
            far = near;
        }
    }

    private void label(List<Point> block, String number, String label) {
        double room = block.get(1).x() - block.get(0).x() - unit;
        double x = (block.get(0).x() + block.get(1).x()) / 2;
        double y = (block.get(0).y() + block.get(2).y()) / 2;
        double wide = label.length() * LETTER * textSize;
        if (wide * NARROW <= room) {
            letter(x, y, "middle", "central", "d-on-wood", label);
        } else if (wide <= room) {
            letter(x, y, "middle", "central", "d-on-wood d-wide", label);
            letter(x, y, "middle", "central", "d-on-wood d-narrow", number);
        } else {
            letter(x, y, "middle", "central", "d-on-wood", number);
        }
    }

    // Pieces of drawing

    /** A dimension line over the whole length; returns where the drawing ends below its figure. */
    private double dimension(double y) {
        double tick = unit * 0.6;
        stroke(
                "d-dim",
                new Pen()
                        .line(0, y, length, y)
                        .line(0, y - tick, 0, y + tick)
                        .line(length, y - tick, length, y + tick)
                        .line(-tick / 2, y + tick / 2, tick / 2, y - tick / 2)
                        .line(length - tick / 2, y + tick / 2, length + tick / 2, y - tick / 2));
        letter(length / 2, y + unit * 0.7, "middle", "hanging", "d-soft", size());
        return y + unit * 0.7 + textSize * BELOW;
    }

    private void wood(WoodLook look, Pen block) {
        stroke("wood wood-" + look.tone(), block);
    }

    private void grain(WoodLook look, double x1, double x2, double y1, double y2, double rise) {
        Pen pen = new Pen();
        for (double y : lineHeights(look, y1, y2)) {
            if (rise > 0) {
                pen.bent(x1, x2, y, rise);
            } else {
                pen.line(x1, y, x2, y);
            }
        }
        stroke(grainLook(look), pen);
    }

    private static String grainLook(WoodLook look) {
        return "grain grain-" + look.pattern() + " on-" + look.tone();
    }

    /** Where the lines of a wood's pattern run. */
    private List<Double> lineHeights(WoodLook look, double y1, double y2) {
        double spacing = switch (look.pattern()) {
            case 2, 4 -> unit * 0.75;
            case 6 -> unit * 1.8;
            default -> unit * 1.3;
        };
        List<Double> heights = new ArrayList<>();
        int count = Math.max(1, (int) Math.floor((y2 - y1) / spacing));
        double step = (y2 - y1) / count;
        for (int i = 0; i < count; i++) {
            double y = y1 + step * (i + 0.5);
            if (look.pattern() == 6) {
                heights.add(y - step * 0.13);
                heights.add(y + step * 0.13);
            } else {
                heights.add(y);
            }
        }
        return heights;
    }

    private void waste(List<Point> corners) {
        stroke("d-paper", new Pen(), corners);
        stroke("d-waste", new Pen().hatch(corners, unit * 1.1, true).polygon(corners));
    }

    private void outline(List<Point> corners) {
        stroke("d-thick", new Pen(), corners);
    }

    private void outlineThin(List<Point> corners) {
        stroke("d-thin", new Pen(), corners);
    }

    private void stroke(String look, Pen pen, List<Point> corners) {
        stroke(look, pen.polygon(corners));
    }

    private void stroke(String look, Pen pen) {
        if (!pen.isEmpty()) {
            strokes.add(new Stroke(look, pen.data()));
        }
    }

    private void letter(double x, double y, String anchor, String baseline, String look, String text) {
        lettering.add(new Lettering(Pen.number(x), Pen.number(y), anchor, baseline, look, text));
    }

    private static Pen bentBlock(double x1, double x2, double top, double bottom, double rise) {
        if (rise <= 0) {
            return new Pen().polygon(rectangle(x1, x2, top, bottom));
        }
        return new Pen()
                .bent(x1, x2, top, rise)
                .command("L", x2, bottom)
                .curve((x1 + x2) / 2, bottom - 2 * rise, x1, bottom)
                .close();
    }

    private static List<Point> rectangle(double x1, double x2, double top, double bottom) {
        return List.of(new Point(x1, top), new Point(x2, top), new Point(x2, bottom), new Point(x1, bottom));
    }

    private static double[] spanAt(List<Point> corners, double y) {
        List<Double> hits = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            if ((a.y() <= y) != (b.y() <= y)) {
                hits.add(a.x() + (y - a.y()) / (b.y() - a.y()) * (b.x() - a.x()));
            }
        }
        return hits.size() == 2
                ? new double[] {Math.min(hits.get(0), hits.get(1)), Math.max(hits.get(0), hits.get(1))}
                : new double[0];
    }

    private List<Band> fromFarEdge() {
        List<Band> bands = new ArrayList<>(strip.bands());
        java.util.Collections.reverse(bands);
        return bands;
    }

    private Band bandAt(double nearDistance) {
        double edge = 0;
        for (Band band : strip.bands()) {
            edge += band.width().mm();
            if (nearDistance < edge) {
                return band;
            }
        }
        return strip.bands().get(strip.bands().size() - 1);
    }

    private int warpFactor() {
        double most = strip.bow().max(strip.crook()).mm();
        for (int factor : FACTORS) {
            if (most * factor <= MOST_BEND * length) {
                return factor;
            }
        }
        return 1;
    }

    private static double drawn(Length rise, int factor) {
        return rise.mm() < LEAST_WARP_MM ? 0 : rise.mm() * factor;
    }

    private static String warpCaption(int factor, boolean bent) {
        if (!bent) {
            return "";
        }
        return factor == 1 ? "Bends are drawn to scale." : "Bends are drawn " + factor + " times as large as they are.";
    }

    private StripDrawing finish(String kind, double top, double height, String caption) {
        String id = "strip-" + kind + "-"
                + strip.name()
                        .chars()
                        .mapToObj(c -> Character.isLetterOrDigit(c) && c < 128
                                ? Character.toString(c)
                                : "_" + Integer.toHexString(c))
                        .collect(Collectors.joining());
        String box = Pen.number(left) + " " + Pen.number(top) + " " + Pen.number(viewWidth) + " " + Pen.number(height);
        return new StripDrawing(
                id, strip.name(), description(), box, Pen.number(textSize), strokes, lettering, caption);
    }

    private String size() {
        return MM.number(strip.length()) + " × " + MM.number(strip.width()) + " × " + MM.print(strip.thickness());
    }

    private String description() {
        StringBuilder text = new StringBuilder(size() + ".");
        if (strip.bands().size() > 1) {
            text.append(" Laminated from ").append(strip.bands().size()).append(" strips.");
        }
        if (strip.bow().isPositive()) {
            text.append(" Bow ").append(MM.print(strip.bow())).append('.');
        }
        if (strip.crook().isPositive()) {
            text.append(" Crook ").append(MM.print(strip.crook())).append('.');
        }
        if (!strip.flaws().isEmpty()) {
            text.append(
                    strip.flaws().size() == 1
                            ? " One flaw."
                            : " " + strip.flaws().size() + " flaws.");
        }
        for (Lane lane : strip.lanes()) {
            for (Part part : lane.parts()) {
                text.append(' ')
                        .append(part.label())
                        .append(" from ")
                        .append(MM.number(part.from()))
                        .append(" to ")
                        .append(MM.print(part.to()))
                        .append('.');
            }
            for (Rest rest : lane.rests()) {
                text.append(" Rest from ")
                        .append(MM.number(rest.from()))
                        .append(" to ")
                        .append(MM.print(rest.to()))
                        .append('.');
            }
        }
        return text.toString();
    }
}
