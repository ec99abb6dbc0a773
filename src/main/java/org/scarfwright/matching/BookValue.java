package org.scarfwright.matching;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.scarfwright.matching.search.SearchProblem.RestValue;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.ShopSettings;

/**
 * What a piece counts when the plan decides which wood to spend. It orders pieces and is no price: long straight stock is dear,
 * wood that is warped, short or old is cheap, so that it is used where it will do.
 *
 * <p>A piece is booked at its cost, or at {@link #CENTS_PER_LITRE} of its volume when nobody knows the cost, spread evenly over
 * its length, times the share of each of these that holds. A rest is booked by the same rule, its own length deciding whether it
 * is short, and never above the piece it comes from. Everything is rounded down.
 *
 * <p><b>Source:</b> derived here; the shares are this program's choice.
 */
record BookValue(StockStandards standards, ShopSettings settings, LocalDate day) {
    /** What a litre of neck wood is taken to cost, in hundredths: a plain figure that only has to be the same for all pieces. */
    static final long CENTS_PER_LITRE = 600;

    static final int SET_ASIDE_PERCENT = 40;
    static final int SHORT_PERCENT = 60;
    static final int OLD_PERCENT = 80;
    static final int OLD_AFTER_YEARS = 3;

    private static final long UM_PER_KM = 1_000_000_000L;

    /** In hundredths. */
    long ofPiece(Piece piece) {
        long rate = centsPerKm(piece, standards.isShort(piece));
        return Math.multiplyExact(rate, piece.length().length().um()) / UM_PER_KM;
    }

    /** What a rest of this piece is worth by its length; empty when the piece is too narrow for any rest to go back. */
    List<RestValue> ofRests(Piece piece) {
        List<RestValue> rests = new ArrayList<>();
        if (piece.width().length().isShorterThan(settings.usableRestWidth())) {
            return rests;
        }
        Length usable = settings.usableRestLength();
        if (standards.shortUnder().isLongerThan(usable)) {
            rests.add(new RestValue(usable.um(), centsPerKm(piece, true)));
        }
        if (!standards.isShort(piece)) {
            rests.add(new RestValue(standards.shortUnder().max(usable).um(), centsPerKm(piece, false)));
        }
        return rests;
    }

    private long centsPerKm(Piece piece, boolean isShort) {
        long cents = piece.cost() != null
                ? piece.cost().cents()
                : (long) Math.floor(piece.volume().cm3() / 1000 * CENTS_PER_LITRE);
        long rate =
                Math.multiplyExact(cents, UM_PER_KM) / piece.length().length().um();
        if (piece.setAside()) {
            rate = rate * SET_ASIDE_PERCENT / 100;
        }
        if (piece.since().isBefore(day.minusYears(OLD_AFTER_YEARS))) {
            rate = rate * OLD_PERCENT / 100;
        }
        return isShort ? rate * SHORT_PERCENT / 100 : rate;
    }
}
