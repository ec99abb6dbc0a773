package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWood.Lamination;
import org.scarfwright.rack.PieceWood.LaminationStrip;

/**
 * The lines of a laminated neck go on in its head. Parts are ripped from the middle of a piece, so lines are compared by their
 * distance from its centre line, as far out as the narrower part reaches. A head that is sawn from the same blank is turned over
 * about its length before it is glued, which mirrors it: the lines must meet turned over as well, so only a pattern that is the
 * same from both edges fits.
 */
record LinesMeetRule() implements PairRule {
    /** What the eye forgives and truing takes out. Common practice. */
    static final Length TOLERANCE = Length.ofUm(500);

    @Override
    public String name() {
        return "lines meet";
    }

    @Override
    public Verdict judge(PairTrial t) {
        if (!t.design().linesMeet()) {
            return Verdict.FITS;
        }
        Length reach =
                t.design().neckWidth().min(t.design().headWidth().length()).halfUp();
        List<Length> neck = lines(t.neck(), reach);
        List<Length> head = lines(t.head(), reach);
        if (neck.size() != head.size()) {
            return new Verdict.Refused(
                    name(),
                    "the lamination lines cannot meet: " + t.neck().code() + " has " + neck.size()
                            + " within the neck's width and " + t.head().code() + " has " + head.size(),
                    null);
        }
        Length off = off(neck, head).max(off(neck, mirrored(head)));
        if (!off.isLongerThan(TOLERANCE)) {
            return Verdict.FITS;
        }
        return new Verdict.Refused(
                name(),
                "the lamination lines of " + t.neck().code() + " and "
                        + t.head().code() + " miss each other by " + Words.atLeast(off),
                off);
    }

    /** Distances of the lines from the centre line, near edge first, those that lie within reach. */
    private static List<Length> lines(Piece piece, Length reach) {
        List<Length> lines = new ArrayList<>();
        if (piece.wood() instanceof Lamination lamination) {
            // In halves of a micrometre the centre line of an odd width would be exact; one half is far below the
            // tolerance.
            Length at = Length.ZERO.minus(piece.width().length().halfUp());
            List<LaminationStrip> strips = lamination.strips();
            for (LaminationStrip strip : strips.subList(0, strips.size() - 1)) {
                at = at.plus(strip.width());
                if (Math.abs(at.um()) < reach.um()) {
                    lines.add(at);
                }
            }
        }
        return lines;
    }

    private static List<Length> mirrored(List<Length> lines) {
        List<Length> mirrored = new ArrayList<>();
        for (int i = lines.size() - 1; i >= 0; i--) {
            mirrored.add(Length.ZERO.minus(lines.get(i)));
        }
        return mirrored;
    }

    private static Length off(List<Length> a, List<Length> b) {
        Length off = Length.ZERO;
        for (int i = 0; i < a.size(); i++) {
            off = off.max(Length.ofUm(Math.abs(a.get(i).um() - b.get(i).um())));
        }
        return off;
    }
}
