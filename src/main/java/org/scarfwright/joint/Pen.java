package org.scarfwright.joint;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;

/** Draws outlines, grain and dimensions, and keeps track of the paper they need. Turns y over, because SVG counts down. */
final class Pen {
    /** A row of dimensions is this many font sizes high; a label may grow to twice its size on a narrow figure. */
    private static final double ROW = 3.1;

    private static final double LARGEST_TEXT = 2;
    private static final double MIDDLING_TEXT = 1.35;
    private static final double GLYPH = 0.56;
    /** Millimetres from one line of grain to the next. */
    static final double GRAIN = 3.2;

    private final double font;
    private final LengthFormat format;
    private final List<JointDrawing.Area> areas = new ArrayList<>();
    private final List<JointDrawing.Path> paths = new ArrayList<>();
    private final List<JointDrawing.Label> labels = new ArrayList<>();
    /** The line of the dimension being drawn. */
    private @Nullable String measured;

    private double left = Double.POSITIVE_INFINITY;
    private double right = Double.NEGATIVE_INFINITY;
    private double bottom = Double.POSITIVE_INFINITY;
    private double top = Double.NEGATIVE_INFINITY;

    /**
     * @param width what is drawn without its labels; text is sized so that it can be read on a phone
     * @param unit of the dimensions
     */
    Pen(double width, LengthUnit unit) {
        this.font = width / 52;
        this.format = new LengthFormat(unit, Locale.ROOT);
    }

    /** A length without its unit. */
    String bare(double mm) {
        return format.number(Length.nearestMm(mm));
    }

    /** A length with its unit. */
    String said(double mm) {
        return format.print(Length.nearestMm(mm));
    }

    /** A measure of the table. */
    Text row(JointRow row, double mm) {
        return new Text(row.letter(), row.word(), bare(mm));
    }

    double font() {
        return font;
    }

    double row() {
        return ROW * font;
    }

    /** A rectangle along the neck, its middle on the axis. */
    static List<Point> block(double from, double to, double width) {
        return List.of(
                new Point(from, width / 2),
                new Point(to, width / 2),
                new Point(to, -width / 2),
                new Point(from, -width / 2));
    }

    void area(String style, List<Point> outline) {
        StringBuilder points = new StringBuilder();
        for (Point p : outline) {
            points.append(points.isEmpty() ? "" : " ").append(at(p));
        }
        areas.add(new JointDrawing.Area(style, points.toString()));
    }

    void line(String style, Point... points) {
        StringBuilder d = new StringBuilder();
        for (Point p : points) {
            d.append(d.isEmpty() ? "M" : " L").append(at(p));
        }
        paths.add(new JointDrawing.Path(style, d.toString()));
    }

    /** Parallel lines inside a convex outline. */
    void grain(String style, List<Point> outline, Point direction, double spacing) {
        Point across = new Point(-direction.y(), direction.x());
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Point p : outline) {
            double offset = p.x() * across.x() + p.y() * across.y();
            low = Math.min(low, offset);
            high = Math.max(high, offset);
        }
        StringBuilder d = new StringBuilder();
        for (double offset = low + spacing / 2; offset < high; offset += spacing) {
            clip(d, outline, across.times(offset), direction);
        }
        paths.add(new JointDrawing.Path(style, d.toString()));
    }

    private void clip(StringBuilder d, List<Point> outline, Point on, Point direction) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < outline.size(); i++) {
            Point a = outline.get(i);
            Point edge = outline.get((i + 1) % outline.size()).minus(a);
            double slant = direction.cross(edge);
            if (Math.abs(slant) < 1e-12) {
                continue;
            }
            double onEdge = on.minus(a).cross(direction) / edge.cross(direction);
            if (onEdge >= 0 && onEdge <= 1) {
                double along = a.minus(on).cross(edge) / slant;
                from = Math.min(from, along);
                to = Math.max(to, along);
            }
        }
        if (to - from > 0.5) {
            d.append(d.isEmpty() ? "M" : " M")
                    .append(at(on.plus(direction.times(from))))
                    .append(" L")
                    .append(at(on.plus(direction.times(to))));
        }
    }

    /**
     * A dimension between two points, its line moved outward.
     *
     * @param outward unit vector square to the line between the points
     * @param offset how far
     * @param broken the measure goes on past its first point, where the drawing is broken off
     */
    void dimension(Point from, Point to, Point outward, double offset, boolean broken, Text text) {
        Point a = from.plus(outward.times(offset));
        Point b = to.plus(outward.times(offset));
        Point past = outward.times(0.6 * font);
        if (!broken) {
            line("d-dim", from.plus(past), a.plus(past));
            tick(a, b);
        }
        line("d-dim", to.plus(past), b.plus(past));
        tick(b, a);
        line("d-dim", a, b);
        measured = broken ? null : paths.get(paths.size() - 1).d();
        double length = a.distanceTo(b);
        Point way = b.minus(a).times(1 / length);
        Point up = way.x() >= 0 ? new Point(-way.y(), way.x()) : new Point(way.y(), -way.x());
        double turn = -Math.toDegrees(Math.atan2(way.y(), way.x()));
        if (Math.abs(way.x()) < 1e-9) {
            Point beside = a.middleTo(b).plus(outward.times(0.5 * font)).minus(new Point(0, 0.4 * font));
            label(text, beside, outward.x() < 0 ? "end" : "start", 0);
        } else if (text.widestOn(font) < length) {
            label(text, a.middleTo(b).plus(up.times(0.45 * font)), "middle", turn);
        } else if (text.withoutWord().widestOn(font) < length) {
            label(text.withoutWord(), a.middleTo(b).plus(up.times(0.45 * font)), "middle", turn);
        } else {
            Point outside = a.minus(way.times(0.9 * font)).minus(up.times(0.35 * font));
            label(text, outside, "end", turn);
        }
        measured = null;
    }

    private void tick(Point at, Point towards) {
        Point way = towards.minus(at).times(0.5 * font / at.distanceTo(towards));
        Point slant = new Point(way.x() - way.y(), way.x() + way.y());
        line("d-thick", at.minus(slant), at.plus(slant));
    }

    void label(Text text, Point at, String anchor, double turn) {
        double width = text.widestOn(font);
        double shift = "middle".equals(anchor) ? -width / 2 : "end".equals(anchor) ? -width : 0;
        Point way = new Point(Math.cos(Math.toRadians(turn)), -Math.sin(Math.toRadians(turn)));
        Point start = at.plus(way.times(shift));
        Point end = start.plus(way.times(width));
        cover(start);
        cover(end);
        cover(start.plus(new Point(0, font * LARGEST_TEXT)));
        cover(end.plus(new Point(0, font * LARGEST_TEXT)));
        boolean level = Math.abs(turn) < 1e-9;
        labels.add(new JointDrawing.Label(
                text.letter(),
                text.word(),
                text.value(),
                number(at.x()),
                number(-at.y()),
                anchor,
                level ? null : "rotate(" + number(turn) + " " + number(at.x()) + " " + number(-at.y()) + ")",
                measured));
    }

    private void cover(Point p) {
        left = Math.min(left, p.x());
        right = Math.max(right, p.x());
        bottom = Math.min(bottom, p.y());
        top = Math.max(top, p.y());
    }

    private String at(Point p) {
        cover(p);
        return number(p.x()) + "," + number(-p.y());
    }

    /** Millimetres to 0.001, without needless noughts. */
    static String number(double mm) {
        BigDecimal value =
                BigDecimal.valueOf(mm).setScale(3, RoundingMode.HALF_UP).stripTrailingZeros();
        return value.signum() == 0 ? "0" : value.toPlainString();
    }

    JointDrawing drawing(String title, String description) {
        double edge = 0.6 * font;
        String viewBox = number(left - edge) + " " + number(-top - edge) + " " + number(right - left + 2 * edge) + " "
                + number(top - bottom + 2 * edge);
        return new JointDrawing(title, description, viewBox, number(font), areas, paths, labels);
    }

    /**
     * What a label says.
     *
     * @param letter row of the table
     * @param word left away where the figure is narrow
     */
    record Text(@Nullable String letter, @Nullable String word, String value) {
        Text withoutWord() {
            return letter == null ? this : new Text(letter, null, value);
        }

        /** Its width where it is widest: without the word on a narrow figure, or with it on a middling one. */
        double widestOn(double font) {
            int narrow = value.length() + (letter == null ? 0 : letter.length() + 1);
            int middling = narrow + (word == null ? 0 : word.length() + 1);
            return Math.max(narrow * LARGEST_TEXT, middling * MIDDLING_TEXT) * GLYPH * font;
        }
    }
}
