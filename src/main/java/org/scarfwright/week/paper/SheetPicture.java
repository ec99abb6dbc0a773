package org.scarfwright.week.paper;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.week.paper.Sheet.Align;

/**
 * One sheet as a page shows it: the same marks as in the PDF, for an svg element of this size in millimetres.
 *
 * @param width of what a printer reaches, in millimetres
 * @param height see width
 */
public record SheetPicture(String width, String height, List<Mark> marks) {
    /**
     * A path or a line of text; the other half is null.
     *
     * @param d path data; null for text
     * @param look class of the style sheet: the kind of line, and whether it is filled
     * @param text null for a path
     * @param wide how wide the text is in the PDF's letters; a browser that lacks them keeps to it
     */
    public record Mark(
            @Nullable String d,
            String look,
            @Nullable String text,
            @Nullable String x,
            @Nullable String y,
            @Nullable String size,
            @Nullable String anchor,
            @Nullable String turn,
            @Nullable String wide) {}

    static Mark path(String d, Line line, double grey, boolean stroked) {
        String fill = grey < 1 ? " p-ink" : stroked ? "" : " p-paper";
        return new Mark(
                d,
                (stroked ? "p-" + line.name().toLowerCase(java.util.Locale.ROOT) : "p-bare") + fill,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    static Mark letters(Spot at, double size, Align align, double degrees, Words words) {
        String x = number(at.x());
        String y = number(at.y());
        return new Mark(
                null,
                "p-letters",
                words.text(),
                x,
                y,
                number(size),
                switch (align) {
                    case LEFT -> "start";
                    case MIDDLE -> "middle";
                    case RIGHT -> "end";
                },
                degrees == 0 ? null : "rotate(" + number(-degrees) + " " + x + " " + y + ")",
                words.width() == 0 ? null : number(words.width()));
    }

    /** A line of text and how wide it is. */
    record Words(String text, double width) {}

    /** Millimetres to a thousandth. */
    static String number(double mm) {
        BigDecimal value =
                BigDecimal.valueOf(mm).setScale(3, RoundingMode.HALF_UP).stripTrailingZeros();
        return value.signum() == 0 ? "0" : value.toPlainString();
    }
}
