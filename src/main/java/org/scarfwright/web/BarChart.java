package org.scarfwright.web;

import java.util.List;
import org.scarfwright.web.Pen.Point;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Stroke;

/** Bars side by side. */
public final class BarChart {
    private static final double HATCH = 7;

    private BarChart() {}

    /**
     * @param value not negative
     * @param shown above the bar
     * @param hatched to be told apart from the others
     */
    public record Bar(String name, double value, String shown, boolean hatched) {}

    /**
     * @param id unique on the page
     * @param unit behind every number at the left
     */
    public static StripDrawing of(String id, String title, String unit, String caption, List<Bar> bars) {
        double most =
                ChartField.round(bars.stream().mapToDouble(Bar::value).max().orElse(0));
        ChartField field = new ChartField(most, unit);
        double slot = ChartField.WIDE / Math.max(1, bars.size());
        StringBuilder told = new StringBuilder();
        for (int i = 0; i < bars.size(); i++) {
            Bar bar = bars.get(i);
            double left = slot * (i + 0.15);
            double right = slot * (i + 0.85);
            double top = field.y(bar.value());
            List<Point> block =
                    List.of(new Point(left, top), new Point(right, top), new Point(right, 0), new Point(left, 0));
            if (bar.value() > 0) {
                field.strokes.add(
                        bar.hatched()
                                ? new Stroke(
                                        "d-waste",
                                        new Pen().hatch(block, HATCH, true).data())
                                : new Stroke(
                                        "wood wood-2", new Pen().polygon(block).data()));
                field.strokes.add(new Stroke("d-thin", new Pen().polygon(block).data()));
            }
            field.words.add(new Lettering(
                    Pen.number((left + right) / 2), Pen.number(top - 4), "middle", "auto", "", bar.shown()));
            field.below((left + right) / 2, "middle", bar.name());
            told.append(bar.name()).append(": ").append(bar.shown()).append(". ");
        }
        return field.drawing(id, title, told.toString().strip(), caption);
    }
}
