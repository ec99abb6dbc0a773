package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * How much of a piece's warp is left in a part of it, wherever along the piece the part is cut.
 *
 * <p>Symbols: b rise of the whole piece (bow or crook), L its length, l the part's length, d twist of the whole piece, m the
 * reading over the middle half, share = l/L from 0 to 1. All in mm.
 *
 * <p><b>One reading.</b> The rise is one circular arc over the length, the twist even along it: b·(l/L)² and d·(l/L). The
 * middle half of such a piece shows b/4 and d/2.
 *
 * <p><b>Two readings.</b> They fix two bends: one arc in the middle half, another in the two outer quarters, alike. With the second
 * derivative 32·m/L² inside and k outside, the whole rises b = 3·m + k·L²/32, so that the outer quarters are bent as an even
 * piece whose middle half shows b − 3·m. A part may be cut anywhere, so the sharper of the two bends counts for all of it:
 * 4·max(m, b − 3·m)·(l/L)², and never more than b, because no part is further out than the piece it lies in. In the same way
 * twist counts as 2·max(m, d − m)·(l/L), and never more than d. Readings that agree with one arc give what one reading gives;
 * readings that do not, in either direction, give more and never less.
 *
 * <p>A piece that bends one way shows at most half of its rise over the middle half, and exactly half when it is sharply bent
 * in the middle. Where the middle shows more, one of the two readings is too small: the whole then counts as 2·m. A twist that
 * runs back toward the ends shows more over the middle than over the whole; the whole then counts as m.
 *
 * <p>Range: b, d, m ≥ 0, 0 ≤ share ≤ 1. <b>Source:</b> derived here; that an arc's rise goes with the square of its chord is
 * the geometry of a flat circle, whose true rise is a little less. Not covered: a piece bent more sharply over less than a quarter
 * of its length than both readings tell, or at one end only, and one whose middle is twisted the other way than the whole.
 * Wood with a kink is seen, not computed.
 */
public final class WarpLaw {
    private WarpLaw() {}

    /** Bow or crook left in a part, in mm. */
    static double rise(Length whole, @Nullable Length middle, double share) {
        double b = whole.mm();
        if (middle == null) {
            return b * share * share;
        }
        double most = Math.max(b, 2 * middle.mm());
        return Math.min(most, sharpest(most, middle.mm()) * share * share);
    }

    /** Twist left in a part over the piece's full width, in mm. */
    static double twist(Length whole, @Nullable Length middle, double share) {
        double d = whole.mm();
        if (middle == null) {
            return d * share;
        }
        double most = Math.max(d, middle.mm());
        return Math.min(most, tightest(most, middle.mm()) * share);
    }

    /** The bow or crook of an evenly bent piece that is bent as sharply as this one is where it is worst. Rounded up. */
    public static Length asEvenRise(Length whole, @Nullable Length middle) {
        return middle == null ? whole : Length.upFromMm(sharpest(Math.max(whole.mm(), 2 * middle.mm()), middle.mm()));
    }

    /** The twist of an evenly twisted piece that is twisted as tightly as this one is where it is worst. Rounded up. */
    public static Length asEvenTwist(Length whole, @Nullable Length middle) {
        return middle == null ? whole : Length.upFromMm(tightest(Math.max(whole.mm(), middle.mm()), middle.mm()));
    }

    private static double sharpest(double whole, double middle) {
        return 4 * Math.max(middle, whole - 3 * middle);
    }

    private static double tightest(double whole, double middle) {
        return 2 * Math.max(middle, whole - middle);
    }
}
