package org.scarfwright.web;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Stroke;

/**
 * Two amounts of each thing against each other, on axes of one scale: on the slanting line they are alike. Each dot opens what it
 * stands for.
 *
 * @param drawing everything but the dots
 * @param marks the dots, drawn upon it
 */
public record DotChart(StripDrawing drawing, List<Mark> marks) {
    private static final double HALF = 4;

    public DotChart {
        marks = List.copyOf(marks);
    }

    /**
     * A thing.
     *
     * @param along not negative, as {@code up}
     * @param address of what it stands for
     * @param words what it is and how much
     */
    public record Dot(double along, double up, String address, String words) {}

    /** A dot as it is drawn. */
    public record Mark(String data, String address, String words) {}

    /** What the axes say. */
    public record Axes(String along, String up, String unit) {}

    /** @param id unique on the page */
    public static DotChart of(String id, String title, Axes axes, String caption, List<Dot> dots) {
        double most = ChartField.round(dots.stream()
                .mapToDouble(d -> Math.max(d.along(), d.up()))
                .max()
                .orElse(0));
        ChartField field = new ChartField(most, "");
        field.strokes.add(new Stroke(
                "d-axis",
                new Pen().line(0, field.y(0), ChartField.WIDE, field.y(most)).data()));
        List<Mark> marks = new ArrayList<>();
        dots.forEach(d -> marks.add(new Mark(
                ChartField.diamond(ChartField.WIDE * Math.max(0, d.along()) / most, field.y(Math.max(0, d.up())), HALF),
                d.address(),
                d.words())));
        field.below(0, "middle", "0");
        field.below(ChartField.WIDE, "end", ChartField.number(most) + " " + axes.unit());
        field.below(ChartField.WIDE / 2, "middle", axes.along());
        field.words.add(new Lettering(
                "0", Pen.number(-ChartField.HIGH - 12), "start", "auto", "d-soft", axes.up() + ", " + axes.unit()));
        long above = dots.stream().filter(d -> d.up() > d.along()).count();
        return new DotChart(
                field.drawing(id, title, dots.size() + " in all; " + above + " above the line.", caption), marks);
    }
}
