package org.scarfwright.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Moisture;

/**
 * How a piece shrinks and swells across its grain.
 *
 * <p><b>Source:</b> Forest Products Laboratory, Wood Handbook (FPL-GTR-282), chapter 13, with Tables 4-3, 4-4 and 13-5.
 */
public final class DimensionalChange {
    public static final Moisture DRIEST = new Moisture(600);
    public static final Moisture WETTEST = new Moisture(1400);

    private static final String TRUE_MAHOGANY = "mahogany_true";

    /**
     * A coefficient, or two where published figures differ.
     *
     * @param low change per 1 % of moisture content, as a fraction of the size at 10 %
     * @param high the same as low where figures agree
     */
    public record Coefficient(BigDecimal low, BigDecimal high) {
        public boolean isRange() {
            return low.compareTo(high) != 0;
        }
    }

    private DimensionalChange() {}

    /**
     * Dimensional change coefficient from total shrinkage: C = (S/100/30) / (1 − (S/100)·20/30), per 1 % of moisture content,
     * referred to the size at 10 %, rounded to 0.00001 as it is printed.
     *
     * <p><b>Source:</b> the rule by which Table 13-5 follows from Table 4-3 (fibre saturation at 30 %), found by comparing the two.
     *
     * @param shrinkagePct S, from green to oven-dry in percent of the green size, above 0 and below 50
     */
    public static BigDecimal coefficient(double shrinkagePct) {
        if (!(shrinkagePct > 0 && shrinkagePct < 50)) {
            throw new IllegalArgumentException("not a total shrinkage in percent: " + shrinkagePct);
        }
        double s = shrinkagePct / 100;
        return BigDecimal.valueOf(s / 30 / (1 - s * 20 / 30)).setScale(5, RoundingMode.HALF_UP);
    }

    /**
     * The coefficient of a wood; empty where its shrinkage is not known. For true mahogany the two tables differ by about 70 %, so
     * both are given; the figure of Table 13-5 (0.00172 radial, 0.00238 tangential) is from memory.
     */
    public static Optional<Coefficient> of(Species wood, GrainDirection direction) {
        boolean radial = direction == GrainDirection.RADIAL;
        @Nullable Double shrinkage = radial ? wood.shrinkRadialPct() : wood.shrinkTangentialPct();
        if (shrinkage == null) {
            return Optional.empty();
        }
        BigDecimal low = coefficient(shrinkage);
        BigDecimal high = TRUE_MAHOGANY.equals(wood.id()) ? new BigDecimal(radial ? "0.00172" : "0.00238") : low;
        return Optional.of(new Coefficient(low, high));
    }

    /**
     * Change of a size across the grain: ΔD = D·C·(MC2 − MC1), to the nearest micrometre; below zero when the wood dries.
     *
     * @param size D, at the first moisture content
     * @param coefficient C, per 1 % of moisture content
     * @throws IllegalArgumentException outside 6 to 14 %, where the rule does not hold, with a sentence that tells it
     */
    public static Length movement(Length size, BigDecimal coefficient, Moisture from, Moisture to) {
        moistureRefusal(from).or(() -> moistureRefusal(to)).ifPresent(reason -> {
            throw new IllegalArgumentException(reason);
        });
        return Length.nearestMm(
                size.mm() * coefficient.doubleValue() * to.minus(from).points());
    }

    /** Why the rule does not hold at this moisture content; reads on from its label. */
    public static Optional<String> moistureRefusal(Moisture moisture) {
        return moisture.compareTo(DRIEST) >= 0 && moisture.compareTo(WETTEST) <= 0
                ? Optional.empty()
                : Optional.of(
                        "is " + moisture + "; the rule holds from " + DRIEST + " to " + WETTEST + ", for example 8");
    }
}
