package org.scarfwright.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.scarfwright.web.Pen.Point;
import org.scarfwright.web.StripDrawing.Lettering;
import org.scarfwright.web.StripDrawing.Stroke;

/** Where wood goes, drawn as one strip whose stretches are as long as their shares: used wood plain, rests dashed, waste hatched. */
public final class ShareStrip {
    private static final double LENGTH = 1000;
    private static final double WIDTH = 56;
    private static final double TEXT = 15;
    private static final double HATCH = 11;

    /** A shorter stretch has no room for its letter, and the table beside the drawing names it. */
    private static final double LETTERED = 24;

    private ShareStrip() {}

    /** What becomes of a share. */
    public enum Kind {
        USED,
        REST,
        WASTE
    }

    /**
     * A share.
     *
     * @param letter marks it in the drawing and in the table
     * @param part between 0 and 1; all parts together are 1
     */
    public record Share(String letter, String name, double part, Kind kind) {}

    /** @param id unique on the page */
    public static StripDrawing of(String id, String title, List<Share> shares) {
        List<Stroke> strokes = new ArrayList<>();
        List<Lettering> letters = new ArrayList<>();
        StringBuilder words = new StringBuilder();
        double x = 0;
        boolean rising = true;
        for (Share share : shares) {
            double to = Math.min(LENGTH, x + share.part() * LENGTH);
            List<Point> block = List.of(new Point(x, 0), new Point(to, 0), new Point(to, WIDTH), new Point(x, WIDTH));
            if (to > x) {
                if (share.kind() == Kind.WASTE) {
                    strokes.add(new Stroke(
                            "d-waste", new Pen().hatch(block, HATCH, rising).data()));
                    // Neighbours that differ only in cause are told apart by the way their lines run.
                    rising = !rising;
                } else {
                    strokes.add(new Stroke(
                            share.kind() == Kind.USED ? "wood wood-2" : "wood wood-1",
                            new Pen().polygon(block).data()));
                }
                strokes.add(new Stroke(
                        share.kind() == Kind.REST ? "d-rest" : "d-thin",
                        new Pen().polygon(block).data()));
                if (to - x >= LETTERED) {
                    letters.add(new Lettering(
                            Pen.number((x + to) / 2),
                            Pen.number(WIDTH / 2),
                            "middle",
                            "central",
                            share.kind() == Kind.WASTE ? "d-halo" : "d-on-wood",
                            share.letter()));
                }
            }
            words.append(words.isEmpty() ? "" : " ")
                    .append(share.name())
                    .append(' ')
                    .append(BigDecimal.valueOf(share.part())
                            .movePointRight(2)
                            .setScale(1, RoundingMode.HALF_UP)
                            .toPlainString())
                    .append(" %.");
            x = to;
        }
        strokes.add(new Stroke(
                "d-thick",
                new Pen()
                        .polygon(List.of(
                                new Point(0, 0), new Point(LENGTH, 0), new Point(LENGTH, WIDTH), new Point(0, WIDTH)))
                        .data()));
        String box = "-2 -2 " + Pen.number(LENGTH + 4) + " " + Pen.number(WIDTH + 4);
        return new StripDrawing(id, title, words.toString(), box, Pen.number(TEXT), strokes, letters, "");
    }
}
