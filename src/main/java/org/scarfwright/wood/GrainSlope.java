package org.scarfwright.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/**
 * Grain that does not run along a piece, 1 in so much.
 *
 * <p><b>Source:</b> Forest Products Laboratory, Wood Handbook (FPL-GTR-282), chapter 5, Table 5-12, and Hankinson's formula.
 */
public final class GrainSlope {
    /**
     * What of its strength a clear piece keeps at a slope of grain, in percent of straight-grained wood.
     *
     * @param slope 1 in this
     */
    public record Kept(int slope, int bending, int impact, int compression) {}

    /** Table 5-12, flattest first: modulus of rupture, impact bending, compression parallel to grain. */
    public static final List<Kept> PRINTED = List.of(
            new Kept(25, 96, 95, 100),
            new Kept(20, 93, 90, 100),
            new Kept(15, 89, 81, 100),
            new Kept(10, 81, 62, 99),
            new Kept(5, 55, 36, 93));

    /** Strength across the grain over strength along it, the range that fits Table 5-12 in bending. */
    private static final double LOW_RATIO = 0.040;

    private static final double HIGH_RATIO = 0.045;

    private GrainSlope() {}

    /**
     * Two slopes seen on two faces of one piece: n = 1 / √((1/n1)² + (1/n2)²).
     *
     * <p><b>Source:</b> Wood Handbook, chapter 5 (1 in 12 with 1 in 18 is printed as 1 in 10).
     *
     * @param first 1 in this, above 0
     * @param second 1 in this, above 0
     * @return 1 in this
     */
    public static double combined(double first, double second) {
        if (!(first > 0 && second > 0)) {
            throw new IllegalArgumentException("a slope of grain is 1 in more than 0, not " + first + ", " + second);
        }
        return 1 / Math.hypot(1 / first, 1 / second);
    }

    /**
     * Bending strength kept at a slope, in percent of straight-grained wood, from lowest to highest: Hankinson's formula
     * N = P·Q / (P·sin²a + Q·cos²a) with Q/P from 0.040 to 0.045. Steeper than 1 in 5 or flatter than 1 in 25 it is an extrapolation;
     * see {@link #isExtrapolated}.
     *
     * @param slope 1 in this, above 0
     */
    public static double[] bendingKept(double slope) {
        if (!(slope > 0)) {
            throw new IllegalArgumentException("a slope of grain is 1 in more than 0, not " + slope);
        }
        double a = Math.atan(1 / slope);
        return new double[] {hankinson(a, LOW_RATIO), hankinson(a, HIGH_RATIO)};
    }

    private static double hankinson(double a, double ratio) {
        double sin = Math.sin(a);
        double cos = Math.cos(a);
        return 100 * ratio / (sin * sin + ratio * cos * cos);
    }

    /** The printed row of a slope, where there is one. */
    public static Optional<Kept> printed(double slope) {
        return PRINTED.stream().filter(row -> row.slope() == slope).findFirst();
    }

    /**
     * What is known of the strength kept at a slope, in sentences: the printed row; between two rows Hankinson's formula for
     * bending and the two rows for the rest; beyond them an extrapolation, said to be one.
     *
     * @param slope 1 in this, above 0
     */
    public static String words(double slope) {
        String at = "At 1 in " + plain(slope);
        Optional<Kept> row = printed(slope);
        if (row.isPresent()) {
            Kept kept = row.get();
            return at + " straight-grained bending strength falls to " + kept.bending() + " %, impact strength to "
                    + kept.impact() + " % and compression along the grain to " + kept.compression()
                    + " % (Wood Handbook Table 5-12).";
        }
        double[] kept = bendingKept(slope);
        String bending = at + " about " + whole(kept[0]) + " to " + whole(kept[1])
                + " % of straight-grained bending strength is left (Hankinson’s formula, fitted to Wood Handbook Table 5-12";
        if (isExtrapolated(slope)) {
            return bending + "). No printed row reaches there: this is an extrapolation.";
        }
        Kept flatter = PRINTED.stream()
                .filter(r -> r.slope() > slope)
                .reduce((a, b) -> b)
                .orElseThrow();
        Kept steeper =
                PRINTED.stream().filter(r -> r.slope() < slope).findFirst().orElseThrow();
        return bending + "). Of impact strength " + steeper.impact() + " to " + flatter.impact()
                + " % is left and of compression along the grain " + steeper.compression() + " to "
                + flatter.compression()
                + " %: the printed rows 1 in " + steeper.slope() + " and 1 in " + flatter.slope() + ".";
    }

    private static String plain(double slope) {
        return BigDecimal.valueOf(slope)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String whole(double percent) {
        return BigDecimal.valueOf(percent).setScale(0, RoundingMode.HALF_UP).toPlainString();
    }

    /** True where no printed row lies on either side of the slope. */
    public static boolean isExtrapolated(double slope) {
        return slope < PRINTED.get(PRINTED.size() - 1).slope()
                || slope > PRINTED.get(0).slope();
    }
}
