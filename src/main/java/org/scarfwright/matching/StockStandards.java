package org.scarfwright.matching;

import java.util.List;
import java.util.Optional;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;

/**
 * What makes a piece short or narrow, measured against every design on file and not only this week's.
 *
 * @param shortUnder a piece is short when its longest clear stretch is below this: no neck on file can be cut from it in the
 *     arrangement that takes the longest neck piece
 * @param narrowUnder a piece is narrow when it is below this with its edges jointed: no neck on file can be cut from it in the
 *     arrangement that takes the widest neck piece, without wings
 */
record StockStandards(Length shortUnder, Length narrowUnder) {
    /** Where no design is on file: the neck blank of the worked example, 457 mm underlaid at 10° in 20 mm, without allowances. */
    static final Length SHORT_WITHOUT_DESIGNS = Length.ofMm(570);

    static StockStandards of(List<NeckDesign> designs, ShopRules shop) {
        Saw saw = shop.saws().get(0);
        Optional<Length> length = designs.stream()
                .flatMap(d ->
                        Way.of(d).stream()
                                .map(w -> w.neck().section(saw, w.neck().thickness()))
                                .max(Length::compareTo)
                                .stream())
                .min(Length::compareTo);
        Optional<Length> width = designs.stream()
                .flatMap(d -> Way.of(d).stream().map(w -> w.neck().widthWithoutWings()).max(Length::compareTo).stream())
                .min(Length::compareTo);
        return new StockStandards(length.orElse(SHORT_WITHOUT_DESIGNS), width.orElse(Length.ZERO));
    }

    boolean isShort(Piece piece) {
        return Trial.longestZone(piece).isShorterThan(shortUnder);
    }

    boolean isNarrow(Piece piece, ShopRules shop) {
        return piece.width().length().minus(shop.settings().edgeAllowance()).isShorterThan(narrowUnder);
    }

    /** A neck or head from such a piece is a rescue. */
    boolean isRescue(Piece piece, ShopRules shop) {
        return piece.setAside() || isShort(piece) || isNarrow(piece, shop);
    }
}
