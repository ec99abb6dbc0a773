package org.scarfwright.web;

import java.util.ArrayList;
import java.util.List;

/** Writes SVG path data. Numbers are millimetres with two places and a point, whatever the machine's locale. */
final class Pen {
    /** A line cut this short by a corner would print as nothing. */
    private static final double SPECK = 0.05;

    private final StringBuilder data = new StringBuilder();

    /** Written out by hand: a page of drawings has some ten thousand numbers, and a formatter takes a third of its time for them. */
    static String number(double mm) {
        long hundredths = Math.round(Math.abs(mm) * 100);
        long part = hundredths % 100;
        String text = (mm < 0 && hundredths > 0 ? "-" : "") + hundredths / 100;
        if (part == 0) {
            return text;
        }
        return text + (part < 10 ? ".0" : ".") + (part % 10 == 0 ? part / 10 : part);
    }

    Pen line(double x1, double y1, double x2, double y2) {
        return command("M", x1, y1).command("L", x2, y2);
    }

    /** A level line that rises by {@code rise} at its middle, as one quadratic curve. */
    Pen bent(double x1, double x2, double y, double rise) {
        return command("M", x1, y).curve((x1 + x2) / 2, y - 2 * rise, x2, y);
    }

    Pen curve(double controlX, double controlY, double x, double y) {
        return command("Q", controlX, controlY).append(" ").at(x, y);
    }

    Pen polygon(List<Point> corners) {
        for (int i = 0; i < corners.size(); i++) {
            command(i == 0 ? "M" : "L", corners.get(i).x(), corners.get(i).y());
        }
        return close();
    }

    Pen close() {
        return append("Z");
    }

    /** Lines at 45° that fill a convex polygon; rising to the right, or falling. */
    Pen hatch(List<Point> corners, double spacing, boolean rising) {
        double slope = rising ? -1 : 1;
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (Point p : corners) {
            least = Math.min(least, p.y() - slope * p.x());
            most = Math.max(most, p.y() - slope * p.x());
        }
        // Counted from the origin, so that the lines of neighbouring stretches run on.
        for (double c = (Math.floor(least / spacing) + 1) * spacing; c < most; c += spacing) {
            List<Point> hits = crossings(corners, slope, c);
            if (hits.size() >= 2) {
                Point a = hits.get(0);
                Point b = hits.get(hits.size() - 1);
                if (Math.abs(a.x() - b.x()) > SPECK) {
                    line(a.x(), a.y(), b.x(), b.y());
                }
            }
        }
        return this;
    }

    private static List<Point> crossings(List<Point> corners, double slope, double c) {
        List<Point> hits = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            double da = a.y() - slope * a.x() - c;
            double db = b.y() - slope * b.x() - c;
            if ((da <= 0) != (db <= 0)) {
                double t = da / (da - db);
                hits.add(new Point(a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y())));
            }
        }
        return hits;
    }

    Pen command(String letter, double x, double y) {
        return append(letter).at(x, y);
    }

    boolean isEmpty() {
        return data.isEmpty();
    }

    String data() {
        return data.toString();
    }

    private Pen at(double x, double y) {
        return append(number(x)).append(" ").append(number(y));
    }

    private Pen append(String text) {
        data.append(text);
        return this;
    }

    /** A place on the drawing, in millimetres, y downward. */
    record Point(double x, double y) {}
}
