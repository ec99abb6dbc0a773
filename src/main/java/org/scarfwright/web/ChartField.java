package org.scarfwright.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.scarfwright.web.Pen.Point;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Stroke;

/** The field charts are drawn on: its frame, level lines and their numbers. Its lower left corner is the origin, y downward. */
final class ChartField {
    static final double WIDE = 420;
    static final double HIGH = 200;

    private static final double TEXT = 13;
    private static final double LEFT = 48;
    private static final double RIGHT = 22;
    private static final double ABOVE = 26;
    private static final double BELOW = 44;
    private static final int STEPS = 4;

    final List<Stroke> strokes = new ArrayList<>();
    final List<Lettering> words = new ArrayList<>();

    private final double most;

    /**
     * @param most what the top stands for
     * @param unit behind every number at the left
     */
    ChartField(double most, String unit) {
        this.most = most;
        Pen lines = new Pen();
        for (int i = 0; i <= STEPS; i++) {
            double value = most * i / STEPS;
            lines.line(0, y(value), WIDE, y(value));
            words.add(new Lettering("-6", Pen.number(y(value)), "end", "central", "d-soft", number(value) + unit));
        }
        strokes.add(new Stroke("d-level", lines.data()));
        strokes.add(new Stroke(
                "d-thin",
                new Pen().line(0, y(0), WIDE, y(0)).line(0, y(0), 0, y(most)).data()));
    }

    /** 1, 2 or 5 times a power of ten, not below the value; 1 for nothing. */
    static double round(double value) {
        if (value <= 0) {
            return 1;
        }
        double ten = Math.pow(10, Math.floor(Math.log10(value)));
        for (double step : new double[] {1, 2, 5}) {
            if (value <= step * ten * (1 + 1e-9)) {
                return step * ten;
            }
        }
        return 10 * ten;
    }

    double y(double value) {
        return -HIGH * value / most;
    }

    static String number(double value) {
        return new BigDecimal(value)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    void below(double x, String anchor, String text) {
        words.add(new Lettering(Pen.number(x), "6", anchor, "hanging", "d-soft", text));
    }

    void dot(String look, double x, double y, double half) {
        strokes.add(new Stroke(look, diamond(x, y, half)));
    }

    /** Path data of a square on its corner. */
    static String diamond(double x, double y, double half) {
        return new Pen()
                .polygon(List.of(
                        new Point(x - half, y), new Point(x, y - half), new Point(x + half, y), new Point(x, y + half)))
                .data();
    }

    StripDrawing drawing(String id, String title, String told, String caption) {
        String box = Pen.number(-LEFT) + " " + Pen.number(-HIGH - ABOVE) + " " + Pen.number(LEFT + WIDE + RIGHT) + " "
                + Pen.number(ABOVE + HIGH + BELOW);
        return new StripDrawing(id, title, told, box, Pen.number(TEXT), strokes, words, caption);
    }
}
