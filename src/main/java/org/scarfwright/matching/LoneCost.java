package org.scarfwright.matching;

import java.math.BigDecimal;
import java.util.Optional;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.Zone;

/**
 * What a part spends when it is the only one cut from a piece: the piece's book value less that of its rests, and the length
 * that does not come back. It lies in the shortest clear stretch that takes it. In a plan, parts that share a piece share the
 * cost; this figure compares pieces, it does not add up to the plan.
 *
 * <p><b>Source:</b> derived here from the book value of the search.
 */
record LoneCost(Piece piece, long cents, Length gone) {

    /** Empty when the part does not fit. */
    static Optional<LoneCost> of(PartNeed need, Piece piece, ShopRules shop, BookValue value) {
        Trial trial = Trial.of(need, piece, shop);
        if (!PartRules.allFit(trial)) {
            return Optional.empty();
        }
        Length section = trial.section();
        Zone used = null;
        for (Zone zone : trial.zones()) {
            boolean takes = !section.isLongerThan(zone.length());
            if (takes && (used == null || zone.length().isShorterThan(used.length()))) {
                used = zone;
            }
        }
        if (used == null) {
            return Optional.empty();
        }
        long cents = value.ofPiece(piece);
        Length back = Length.ZERO;
        for (Zone zone : trial.zones()) {
            Segment segment = new Segment(zone.length().um(), new int[0], value.ofRests(piece));
            long rest = zone.equals(used)
                    ? segment.restUm(section.plus(trial.saw().kerf()).um())
                    : zone.length().um();
            cents -= segment.restCents(rest);
            boolean usable = rest >= shop.settings().usableRestLength().um()
                    && !piece.width().length().isShorterThan(shop.settings().usableRestWidth());
            back = usable ? back.plus(Length.ofUm(rest)) : back;
        }
        return Optional.of(new LoneCost(piece, cents, piece.length().length().minus(back)));
    }

    /** Such as: 1.10 EUR and 80.0 mm more. */
    String moreThan(LoneCost other, String currency) {
        long money = cents - other.cents;
        Length length = gone.minus(other.gone);
        String cost = money(Math.abs(money), currency);
        String mm = Words.mm(length.isPositive() ? length : Length.ZERO.minus(length));
        if (money == 0 && length.equals(Length.ZERO)) {
            return "just as much";
        }
        boolean sameWay = money == 0 || length.equals(Length.ZERO) || money > 0 == length.isPositive();
        if (sameWay) {
            return cost + " and " + mm + (money > 0 || (money == 0 && length.isPositive()) ? " more" : " less");
        }
        return cost + (money > 0 ? " more" : " less") + " and " + mm + (length.isPositive() ? " more" : " less");
    }

    String spends(String currency) {
        return money(cents, currency);
    }

    private static String money(long cents, String currency) {
        return BigDecimal.valueOf(cents, 2).toPlainString() + " " + currency;
    }
}
