package org.scarfwright.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.scarfwright.web.Pen.Point;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Stroke;

/**
 * One amount at the left that splits into several at the right, each as high as its share: what is used plain, what is kept
 * dashed, what is lost hatched. Shares are whole hundredths of a percent, so that what is printed adds up.
 */
public final class FlowChart {
    /** Height of the whole amount: a hundredth of a percent is 0.024 of a unit. */
    static final double WHOLE = 240;

    static final double BAR = 14;
    static final double SPREAD = 150;
    static final double GAP = 7;

    private static final int ALL = 10_000;
    private static final double TEXT = 13;
    private static final double LINE = 18;
    private static final double WORDS = 285;
    private static final double HATCH = 6;

    private FlowChart() {}

    /** @param hundredths of a percent, not negative; those of all arms are 10,000 */
    public record Arm(String name, int hundredths, ShareStrip.Kind kind) {
        /** 12.34 %. */
        public String percent() {
            return BigDecimal.valueOf(hundredths, 2).toPlainString() + " %";
        }
    }

    /**
     * @param id unique on the page
     * @param whole names the amount at the left
     */
    public static StripDrawing of(String id, String title, String whole, List<Arm> arms) {
        List<Arm> shown = arms.stream().filter(a -> a.hundredths() > 0).toList();
        List<Stroke> strokes = new ArrayList<>();
        List<Lettering> words = new ArrayList<>();
        StringBuilder told = new StringBuilder();
        double spare = GAP * Math.max(0, shown.size() - 1);
        double left = spare / 2;
        double right = 0;
        double lastWord = -LINE;
        strokes.add(new Stroke("d-thick", block(0, left, BAR, left + WHOLE)));
        boolean rising = true;
        for (Arm arm : shown) {
            double high = WHOLE * arm.hundredths() / ALL;
            List<Point> band = List.of(
                    new Point(BAR, left),
                    new Point(SPREAD, right),
                    new Point(SPREAD + BAR, right),
                    new Point(SPREAD + BAR, right + high),
                    new Point(SPREAD, right + high),
                    new Point(BAR, left + high));
            strokes.add(filled(arm.kind(), band, rising));
            // Neighbours that differ only in cause are told apart by the way their lines run.
            rising = !rising;
            strokes.add(new Stroke(
                    arm.kind() == ShareStrip.Kind.REST ? "d-rest" : "d-thin",
                    new Pen().polygon(band).data()));
            double middle = right + high / 2;
            double word = Math.max(middle, lastWord + LINE);
            strokes.add(new Stroke(
                    "d-dim",
                    new Pen()
                            .line(SPREAD + BAR + 2, middle, SPREAD + BAR + 12, word)
                            .data()));
            words.add(new Lettering(
                    Pen.number(SPREAD + BAR + 15),
                    Pen.number(word),
                    "start",
                    "central",
                    "",
                    arm.name() + " " + arm.percent()));
            told.append(arm.name()).append(' ').append(arm.percent()).append(". ");
            lastWord = word;
            left += high;
            right += high + GAP;
        }
        words.add(new Lettering("0", "-8", "start", "auto", "d-soft", whole));
        double top = -8 - LINE;
        double bottom = Math.max(WHOLE + spare, lastWord + LINE / 2);
        return new StripDrawing(
                id,
                title,
                told.toString().strip(),
                "-2 " + Pen.number(top - 2) + " " + Pen.number(SPREAD + BAR + WORDS) + " "
                        + Pen.number(bottom - top + 4),
                Pen.number(TEXT),
                strokes,
                words,
                "");
    }

    private static Stroke filled(ShareStrip.Kind kind, List<Point> band, boolean rising) {
        return switch (kind) {
            case USED -> new Stroke("wood wood-2", new Pen().polygon(band).data());
            case REST -> new Stroke("wood wood-1", new Pen().polygon(band).data());
            // Only convex shapes can be hatched: the slanting part and the end of the band are each one.
            case WASTE ->
                new Stroke(
                        "d-waste",
                        new Pen()
                                .hatch(List.of(band.get(0), band.get(1), band.get(4), band.get(5)), HATCH, rising)
                                .hatch(List.of(band.get(1), band.get(2), band.get(3), band.get(4)), HATCH, rising)
                                .data());
        };
    }

    private static String block(double x1, double y1, double x2, double y2) {
        return new Pen()
                .polygon(List.of(new Point(x1, y1), new Point(x2, y1), new Point(x2, y2), new Point(x1, y2)))
                .data();
    }
}
