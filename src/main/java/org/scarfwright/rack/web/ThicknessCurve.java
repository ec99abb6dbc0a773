package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.UsableSize;

/**
 * Usable thickness against the length of a part, drawn. All figures are ready to print.
 *
 * @param line path data of the curve
 * @param frame path data of the two axes
 * @param ticks path data of the marks on them
 * @param marks the figures at the marks
 */
record ThicknessCurve(String viewBox, String line, String frame, String ticks, List<Mark> marks, String description) {
    private static final double WIDTH = 160;
    private static final double HEIGHT = 52;
    private static final int STEPS = 60;
    private static final int MOST_MARKS = 7;
    private static final double LEFT = 14;
    private static final double BELOW = 12;
    private static final double ABOVE = 6;
    private static final int[] NICE = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

    ThicknessCurve {
        marks = List.copyOf(marks);
    }

    /** A figure and where it stands. */
    record Mark(String x, String y, String anchor, String text) {}

    /** @param longest longest part to show; must be positive */
    static ThicknessCurve of(Piece piece, Length longest, Length planingPerFace) {
        double most = piece.thickness().length().mm();
        double least = thickness(piece, longest, planingPerFace);
        double bottom = Math.max(0, Math.floor(least - 1));
        double top = Math.ceil(most + 0.001);
        double end = longest.mm();
        StringBuilder line = new StringBuilder();
        for (int i = 1; i <= STEPS; i++) {
            double part = end * i / STEPS;
            double mm = Math.max(bottom, thickness(piece, Length.nearestMm(part), planingPerFace));
            line.append(i == 1 ? "M" : "L").append(x(part, end)).append(' ').append(y(mm, bottom, top));
        }
        StringBuilder ticks = new StringBuilder();
        List<Mark> marks = new ArrayList<>();
        int along = step(end);
        for (int part = along; part <= end; part += along) {
            ticks.append("M")
                    .append(x(part, end))
                    .append(' ')
                    .append(text(HEIGHT))
                    .append("v1.5");
            marks.add(new Mark(x(part, end), text(HEIGHT + 5), "middle", String.valueOf(part)));
        }
        int up = step(top - bottom);
        for (int mm = (int) Math.ceil(bottom / up) * up; mm <= top; mm += up) {
            ticks.append("M0 ").append(y(mm, bottom, top)).append("h-1.5");
            marks.add(new Mark("-2.5", y(mm, bottom, top), "end", String.valueOf(mm)));
        }
        marks.add(new Mark("0", text(-3), "start", "usable thickness in mm"));
        marks.add(new Mark(text(WIDTH), text(HEIGHT + 10), "end", "length of the part in mm"));
        return new ThicknessCurve(
                text(-LEFT) + " " + text(-ABOVE) + " " + text(WIDTH + LEFT + 4) + " " + text(HEIGHT + ABOVE + BELOW),
                line.toString(),
                "M0 0V" + text(HEIGHT) + "H" + text(WIDTH),
                ticks.toString(),
                marks,
                String.format(
                        Locale.ROOT,
                        "A short part keeps %.1f mm, a part of %.0f mm keeps %.1f mm.",
                        thickness(piece, Length.nearestMm(end / STEPS), planingPerFace),
                        end,
                        least));
    }

    private static double thickness(Piece piece, Length part, Length planingPerFace) {
        return UsableSize.thickness(piece, part, piece.width().length(), planingPerFace)
                .mm();
    }

    private static int step(double range) {
        for (int step : NICE) {
            if (range / step <= MOST_MARKS) {
                return step;
            }
        }
        return NICE[NICE.length - 1];
    }

    private static String x(double part, double end) {
        return text(part / end * WIDTH);
    }

    private static String y(double mm, double bottom, double top) {
        return text(HEIGHT - (mm - bottom) / (top - bottom) * HEIGHT);
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
