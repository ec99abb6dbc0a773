package org.scarfwright.matching;

import java.util.List;
import org.scarfwright.joint.Bevel;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.rack.Zone;
import org.scarfwright.shop.Saw;

/**
 * One part tried on one piece, brought to one thickness and cut on one saw. The piece keeps its whole width until the part is
 * cut: sections are crosscut, flattened, bevelled and only then ripped to width, so warp across the width counts in full.
 *
 * @param sawn thickness at the saw, at least the part's own
 */
record Trial(PartNeed need, Piece piece, Length sawn, Saw saw, ShopRules shop) {

    /**
     * The part tried at its own thickness, which asks the least of the piece, on the first saw that makes the cut; where none
     * does, on the first the shop has, and the saw rule says why.
     */
    static Trial of(PartNeed need, Piece piece, ShopRules shop) {
        Length sawn = need.thickness();
        Saw saw = shop.sawFor(piece, sawn, need.angle()).orElse(shop.saws().get(0));
        return new Trial(need, piece, sawn, saw, shop);
    }

    Trial with(PartNeed other) {
        return Trial.of(other, piece, shop);
    }

    boolean neck() {
        return need.role() == Role.NECK;
    }

    Length run() {
        return Bevel.run(sawn, need.angle());
    }

    Length shortSide() {
        return need.shortSide(saw);
    }

    Length longSide() {
        return need.longSide(saw, sawn);
    }

    Length section() {
        return need.section(saw, sawn);
    }

    List<Zone> zones() {
        return UsableSize.zones(piece);
    }

    /** The longest clear stretch; zero when there is none. */
    Length longestZone() {
        return longestZone(piece);
    }

    static Length longestZone(Piece piece) {
        Length longest = Length.ZERO;
        for (Zone zone : UsableSize.zones(piece)) {
            longest = longest.max(zone.length());
        }
        return longest;
    }

    /** Thickness left when a section of this length is flat on both faces. */
    Length thicknessOver(Length section) {
        return thicknessOver(piece, section, shop);
    }

    static Length thicknessOver(Piece piece, Length section, ShopRules shop) {
        return UsableSize.thickness(
                piece, section, piece.width().length(), shop.settings().planingPerFace());
    }

    /** Width left when both edges of a section of this length are straight. */
    Length widthOver(Length section) {
        return UsableSize.width(piece, section, shop.settings().edgeAllowance());
    }
}
