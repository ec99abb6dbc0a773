package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.LongestPart;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.UsableSize;

/**
 * Usable thickness against the length of a part, drawn. All figures are ready to print.
 *
 * @param lines the curves, and the levels and limits that are marked beside them
 * @param frame path data of the two axes
 * @param ticks path data of the marks on them
 * @param marks the figures at the marks
 */
record ThicknessCurve(
        String viewBox, List<Line> lines, String frame, String ticks, List<Mark> marks, String description) {
    private static final double WIDTH = 160;
    private static final double HEIGHT = 52;
    private static final int STEPS = 60;
    private static final int MOST_MARKS = 7;
    private static final double LEFT = 14;
    private static final double BELOW = 12;
    private static final double ABOVE = 6;
    private static final int[] NICE = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

    /** Curves that nowhere differ by more are one line to the eye. */
    private static final double ALIKE = 0.05;

    ThicknessCurve {
        lines = List.copyOf(lines);
        marks = List.copyOf(marks);
    }

    /** A figure and where it stands. */
    record Mark(String x, String y, String anchor, String text) {}

    /**
     * @param look the class of its stroke
     * @param means what it shows, in words for the list below the drawing
     */
    record Line(String data, String look, String means) {}

    /**
     * A width the piece may be ripped to before it is flattened.
     *
     * @param means such as the widest neck on file
     */
    record Ripped(Length width, String means) {}

    /**
     * What is drawn.
     *
     * @param longest longest part to show; must be positive
     * @param straightness how far a neck may be out before planing
     */
    record Wanted(Length longest, Length planingPerFace, Length straightness, List<Ripped> widths) {
        Wanted {
            widths = List.copyOf(widths);
        }
    }

    static ThicknessCurve of(Piece piece, Wanted wanted) {
        Length planing = wanted.planingPerFace();
        double most = piece.thickness().length().mm();
        double end = wanted.longest().mm();
        Length whole = piece.width().length();
        double least = thickness(piece, wanted.longest(), whole, planing);
        Scale scale = new Scale(end, Math.max(0, Math.floor(least - 1)), Math.ceil(most + 0.001));
        List<Line> lines = new ArrayList<>();
        lines.add(new Line(scale.level(most), "d-hidden", "Level dashes: the thickness as measured."));
        if (planing.isPositive()) {
            lines.add(new Line(
                    scale.level(most - 2 * planing.mm()),
                    "d-dim",
                    "Level line: what planing both faces leaves of a flat piece."));
        }
        lines.add(new Line(
                scale.curve(piece, whole, planing), "d-thick", "Thick: parts over the full width, as plans reckon."));
        double shown = least;
        String[] looks = {"d-rest", "d-axis"};
        for (Ripped ripped : wanted.widths()) {
            double gives = thickness(piece, wanted.longest(), ripped.width(), planing);
            if (lines.size() < 3 + looks.length && gives > shown + ALIKE) {
                boolean first = shown == least;
                lines.add(new Line(
                        scale.curve(piece, ripped.width(), planing),
                        looks[first ? 0 : 1],
                        (first ? "Dashed" : "Dash and dot") + ": when the piece is ripped to "
                                + PieceView.MM.print(ripped.width()) + " first, " + ripped.means() + "."));
                shown = gives;
            }
        }
        LongestPart straight = LongestPart.straight(piece, wanted.straightness());
        List<Mark> marks = new ArrayList<>();
        if (straight.limit() == LongestPart.Limit.STRAIGHTNESS) {
            String x = scale.x(straight.length().mm());
            lines.add(new Line(
                    "M" + x + " 0V" + text(HEIGHT),
                    "d-thin d-warn",
                    "Upright: beyond " + PieceView.floor(straight.length()) + " mm a neck is more than "
                            + PieceView.MM.print(wanted.straightness()) + " out of straight before planing."));
        }
        String ticks = scale.ticks(marks);
        return new ThicknessCurve(
                text(-LEFT) + " " + text(-ABOVE) + " " + text(WIDTH + LEFT + 4) + " " + text(HEIGHT + ABOVE + BELOW),
                lines,
                "M0 0V" + text(HEIGHT) + "H" + text(WIDTH),
                ticks,
                marks,
                String.format(
                        Locale.ROOT,
                        "A short part keeps %.1f mm, a part of %.0f mm keeps %.1f mm.",
                        thickness(piece, Length.nearestMm(end / STEPS), whole, planing),
                        end,
                        least));
    }

    private static double thickness(Piece piece, Length part, Length width, Length planingPerFace) {
        return UsableSize.thickness(piece, part, width, planingPerFace).mm();
    }

    /** From millimetres of wood to the drawing. */
    private record Scale(double end, double bottom, double top) {
        String x(double part) {
            return text(part / end * WIDTH);
        }

        String y(double mm) {
            return text(HEIGHT - (Math.max(bottom, mm) - bottom) / (top - bottom) * HEIGHT);
        }

        String level(double mm) {
            return "M0 " + y(mm) + "H" + text(WIDTH);
        }

        String curve(Piece piece, Length width, Length planing) {
            StringBuilder line = new StringBuilder();
            for (int i = 1; i <= STEPS; i++) {
                double part = end * i / STEPS;
                line.append(i == 1 ? "M" : "L")
                        .append(x(part))
                        .append(' ')
                        .append(y(thickness(piece, Length.nearestMm(part), width, planing)));
            }
            return line.toString();
        }

        String ticks(List<Mark> marks) {
            StringBuilder ticks = new StringBuilder();
            int along = step(end);
            for (int part = along; part <= end; part += along) {
                ticks.append("M")
                        .append(x(part))
                        .append(' ')
                        .append(text(HEIGHT))
                        .append("v1.5");
                marks.add(new Mark(x(part), text(HEIGHT + 5), "middle", String.valueOf(part)));
            }
            int up = step(top - bottom);
            for (int mm = (int) Math.ceil(bottom / up) * up; mm <= top; mm += up) {
                ticks.append("M0 ").append(y(mm)).append("h-1.5");
                marks.add(new Mark("-2.5", y(mm), "end", String.valueOf(mm)));
            }
            marks.add(new Mark("0", text(-3), "start", "usable thickness in mm"));
            marks.add(new Mark(text(WIDTH), text(HEIGHT + 10), "end", "length of the part in mm"));
            return ticks.toString();
        }
    }

    private static int step(double range) {
        for (int step : NICE) {
            if (range / step <= MOST_MARKS) {
                return step;
            }
        }
        return NICE[NICE.length - 1];
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
