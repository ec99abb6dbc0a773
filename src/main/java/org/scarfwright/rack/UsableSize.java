package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.scarfwright.measure.Length;

/**
 * What a piece can still give once the warp is planed out.
 *
 * <p>Bow and crook are taken as one circular arc over the piece's length, cup as one arc over its width, twist as even along
 * it. That is an assumption: a page that shows these figures says so. For a part of length l and width w out of a piece
 * L × W × T with bow b, crook r, cup c and twist d, what is left of each in the part is
 *
 * <ul>
 *   <li>bow b·(l/L)², cup c·(w/W)² and half of twist d·(l/L)·(w/W), each of which costs that much thickness;
 *   <li>crook r·(l/L)², which costs that much width.
 * </ul>
 *
 * <p>Where the middle half of the piece was read too, bow, crook and twist are what {@link WarpLaw} makes of both readings:
 * never less than this.
 *
 * <p>Range: 0 &lt; l ≤ L and 0 &lt; w ≤ W. A part that is longer or wider than the piece is taken as long or wide as it: no
 * part has more warp than the whole piece. What the piece offers is rounded down to a micrometre and may be negative when
 * nothing is left; what a part is still out is rounded up.
 *
 * <p><b>Source:</b> derived here. A short chord of a flat arc has a rise in proportion to the square of its length; a
 * surface z = d·x·y over a rectangle lies between two parallel planes half its corner lift apart. The sum of the three is
 * an upper bound of what flattening both faces costs: a plane that is best for one need not be best for the others.
 */
public final class UsableSize {
    private UsableSize() {}

    /**
     * The thickness left when both faces of a part are flat and planed.
     *
     * @param planingPerFace what is planed off each face after the warp is out
     */
    public static Length thickness(Piece piece, Length partLength, Length partWidth, Length planingPerFace) {
        double left = piece.thickness().length().mm() - facesMm(piece, partLength, partWidth);
        return Length.downFromMm(left).minus(planingPerFace.times(2));
    }

    /**
     * The width left when both edges of a part are straight.
     *
     * @param edgeAllowance width taken off to joint both edges, together
     */
    public static Length width(Piece piece, Length partLength, Length edgeAllowance) {
        double share = lengthShare(piece, partLength);
        Warp warp = piece.warp();
        double left = piece.width().length().mm()
                - WarpLaw.rise(warp.crook(), warp.middle().crook(), share);
        return Length.downFromMm(left).minus(edgeAllowance);
    }

    /** How far the part, sawn but not planed, is still out of straight along its flat face. */
    public static Length straightness(Piece piece, Length partLength) {
        double share = lengthShare(piece, partLength);
        return Length.upFromMm(bowMm(piece.warp(), share));
    }

    /** Thickness that flattening both faces of a part costs, before any planing allowance. */
    public static Length flattening(Piece piece, Length partLength, Length partWidth) {
        return Length.upFromMm(facesMm(piece, partLength, partWidth));
    }

    /**
     * The stretches between the end trims and the structural defects, from left to right. A structural defect takes its
     * whole stretch across the full width; a defect that is only for looks takes nothing.
     */
    public static List<Zone> zones(Piece piece) {
        List<Zone> zones = new ArrayList<>();
        long at = piece.trimLeft().um();
        long end = piece.length().length().minus(piece.trimRight()).um();
        List<Defect> blocking = piece.defects().stream()
                .filter(Defect::structural)
                .sorted(Comparator.comparing(Defect::fromLength))
                .toList();
        for (Defect defect : blocking) {
            long from = Math.min(defect.fromLength().um(), end);
            if (from > at) {
                zones.add(new Zone(Length.ofUm(at), Length.ofUm(from)));
            }
            at = Math.max(at, defect.toLength().um());
        }
        if (end > at) {
            zones.add(new Zone(Length.ofUm(at), Length.ofUm(end)));
        }
        return List.copyOf(zones);
    }

    private static double facesMm(Piece piece, Length partLength, Length partWidth) {
        double along = lengthShare(piece, partLength);
        double across = Math.min(1.0, partWidth.mm() / piece.width().length().mm());
        Warp warp = piece.warp();
        return bowMm(warp, along)
                + warp.cup().mm() * across * across
                + WarpLaw.twist(warp.twist(), warp.middle().twist(), along) * across / 2;
    }

    private static double bowMm(Warp warp, double share) {
        return WarpLaw.rise(warp.bow(), warp.middle().bow(), share);
    }

    private static double lengthShare(Piece piece, Length partLength) {
        return Math.min(1.0, partLength.mm() / piece.length().length().mm());
    }
}
