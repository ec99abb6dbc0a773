package org.scarfwright.web;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Stream;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Stroke;

/** Readings by their days: a dot for each, and a heavy line through what they have in the middle. */
public final class TimeChart {
    private TimeChart() {}

    /** @param value not negative */
    public record Dot(LocalDate day, double value) {}

    /** What a chart is called and what its line stands for. */
    public record Words(String title, String unit, String caption) {}

    /**
     * @param id unique on the page
     * @param middle points of the line, the earliest first
     */
    public static StripDrawing of(String id, Words words, List<Dot> dots, List<Dot> middle) {
        List<LocalDate> days = Stream.concat(dots.stream(), middle.stream())
                .map(Dot::day)
                .sorted()
                .toList();
        double most = ChartField.round(Stream.concat(dots.stream(), middle.stream())
                .mapToDouble(Dot::value)
                .max()
                .orElse(0));
        ChartField field = new ChartField(most, "");
        field.words.add(new Lettering("0", Pen.number(-ChartField.HIGH - 12), "start", "auto", "d-soft", words.unit()));
        if (!days.isEmpty()) {
            LocalDate first = days.get(0);
            long span = ChronoUnit.DAYS.between(first, days.get(days.size() - 1));
            dots.forEach(d -> field.dot("d-dot", x(first, d.day(), span), field.y(d.value()), 3));
            Pen line = new Pen();
            for (int i = 0; i < middle.size(); i++) {
                Dot point = middle.get(i);
                line.command(i == 0 ? "M" : "L", x(first, point.day(), span), field.y(point.value()));
            }
            if (middle.size() > 1) {
                field.strokes.add(new Stroke("d-thick", line.data()));
            }
            field.below(x(first, first, span), span == 0 ? "middle" : "start", first.toString());
            if (span > 0) {
                field.below(
                        x(first, days.get(days.size() - 1), span),
                        "end",
                        days.get(days.size() - 1).toString());
            }
        }
        return field.drawing(id, words.title(), dots.size() + " readings drawn.", words.caption());
    }

    private static double x(LocalDate first, LocalDate day, long span) {
        return span == 0
                ? ChartField.WIDE / 2
                : 10 + (ChartField.WIDE - 20) * ChronoUnit.DAYS.between(first, day) / (double) span;
    }
}
