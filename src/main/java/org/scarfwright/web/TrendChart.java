package org.scarfwright.web;

import java.util.List;
import org.scarfwright.web.StripDrawing.Stroke;

/** Shares over time: a dot for each period, and a heavy line for what they have in the middle. */
public final class TrendChart {
    private TrendChart() {}

    /**
     * @param place periods since the first one
     * @param share 0 to 1; more where more came out than went in
     * @param middle of this one and some before it
     */
    public record Mark(String name, long place, double share, double middle) {}

    /**
     * @param id unique on the page
     * @param caption what the line stands for
     */
    public static StripDrawing of(String id, String title, String caption, List<Mark> marks) {
        double most = marks.stream()
                .mapToDouble(m -> Math.max(m.share(), m.middle()))
                .max()
                .orElse(0);
        ChartField field = new ChartField(most <= 1 ? 100 : ChartField.round(100 * most), " %");
        long last = marks.stream().mapToLong(Mark::place).max().orElse(0);
        Pen line = new Pen();
        StringBuilder told = new StringBuilder();
        for (int i = 0; i < marks.size(); i++) {
            Mark mark = marks.get(i);
            line.command(i == 0 ? "M" : "L", x(mark, last), field.y(100 * mark.middle()));
            field.dot("d-dot", x(mark, last), field.y(100 * mark.share()), 4);
            told.append(mark.name())
                    .append(' ')
                    .append(ChartField.number(100 * mark.share()))
                    .append(" %. ");
        }
        if (marks.size() > 1) {
            field.strokes.add(new Stroke("d-thick", line.data()));
        }
        if (!marks.isEmpty()) {
            Mark first = marks.get(0);
            field.below(x(first, last), marks.size() == 1 ? "middle" : "start", first.name());
            if (marks.size() > 1) {
                Mark end = marks.get(marks.size() - 1);
                field.below(x(end, last), "end", end.name());
            }
        }
        return field.drawing(id, title, told.toString().strip(), caption);
    }

    private static double x(Mark mark, long last) {
        return last == 0 ? ChartField.WIDE / 2 : 10 + (ChartField.WIDE - 20) * mark.place() / last;
    }
}
