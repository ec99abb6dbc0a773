package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;

/**
 * What a piece that was cut from another one is, as far as it follows from the other.
 *
 * <p>Its wood, grain, moisture and lot are those of the other. Warp that was measured is reckoned by {@link WarpLaw} for its
 * length, width and length × width, rounded up, and keeps the day of its reading; what was never measured stays unmeasured. Of
 * flaws it has those that lie in its stretch.
 */
final class CutPiece {
    private CutPiece() {}

    /**
     * @param size what it measures
     * @param from where it begins along the other; empty when nobody knows
     */
    static PieceFacts facts(
            Piece whole,
            Cutting.Size size,
            @Nullable Length from,
            @Nullable String place,
            @Nullable Money cost,
            String note) {
        Length length = size.length().length();
        Length width = size.width().length();
        return new PieceFacts(
                wood(whole.wood(), width),
                size.length(),
                size.width(),
                size.thickness(),
                whole.grain(),
                whole.grainSlope(),
                whole.moisture(),
                whole.warp().isMeasured() ? warp(whole, length, width) : null,
                trim(whole.trimLeft(), from != null && from.um() == 0, length),
                trim(whole.trimRight(), from != null && reachesRight(whole, from, length), length),
                from == null ? List.of() : defects(whole.defects(), from, length, width),
                whole.setAside(),
                whole.neckAllowed(),
                whole.lot(),
                whole.lotReadyOn(),
                place,
                cost,
                note);
    }

    private static boolean reachesRight(Piece whole, Length from, Length length) {
        return !from.plus(length).isShorterThan(whole.length().length());
    }

    private static Length trim(Length trim, boolean keeps, Length length) {
        return keeps && trim.times(2).isShorterThan(length) ? trim : Length.ZERO;
    }

    private static PieceWood wood(PieceWood wood, Length width) {
        if (!(wood instanceof PieceWood.Lamination lamination)) {
            return wood;
        }
        // The near edge stays; what was ripped off is gone from the far one.
        List<PieceWood.LaminationStrip> strips = new ArrayList<>();
        Length open = width;
        for (int i = 0; i < lamination.strips().size() && open.isPositive(); i++) {
            PieceWood.LaminationStrip strip = lamination.strips().get(i);
            boolean last = i == lamination.strips().size() - 1;
            Length takes = last ? open : strip.width().min(open);
            strips.add(new PieceWood.LaminationStrip(strip.speciesId(), takes, strip.grain()));
            open = open.minus(takes);
        }
        return strips.size() == 1 ? new PieceWood.Solid(strips.get(0).speciesId()) : new PieceWood.Lamination(strips);
    }

    private static Warp warp(Piece whole, Length length, Length width) {
        double along = Math.min(1, length.mm() / whole.length().length().mm());
        double across = Math.min(1, width.mm() / whole.width().length().mm());
        Warp warp = whole.warp();
        return new Warp(
                Length.upFromMm(WarpLaw.rise(warp.bow(), warp.middle().bow(), along)),
                Length.upFromMm(WarpLaw.rise(warp.crook(), warp.middle().crook(), along)),
                Length.upFromMm(warp.cup().mm() * across * across),
                Length.upFromMm(WarpLaw.twist(warp.twist(), warp.middle().twist(), along) * across),
                warp.readOn());
    }

    private static List<Defect> defects(List<Defect> defects, Length from, Length length, Length width) {
        List<Defect> inside = new ArrayList<>();
        for (Defect d : defects) {
            Length left = d.fromLength().minus(from).max(Length.ZERO);
            Length right = d.toLength().minus(from).min(length);
            Length far = d.toWidth().min(width);
            if (right.isLongerThan(left) && far.isLongerThan(d.fromWidth())) {
                inside.add(new Defect(d.kind(), left, right, d.fromWidth(), far, d.structural()));
            }
        }
        return inside;
    }
}
