package org.scarfwright.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
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

    /**
     * What Table 13-5 prints for the woods it does not take from Tables 4-3 and 4-4: for sweet birch the figures of yellow birch,
     * for black maple the tangential one of sugar maple; true mahogany's are from memory.
     */
    private static final Map<String, Printed> TABLE_13_5 = Map.of(
            "mahogany_true", new Printed(new BigDecimal("0.00172"), new BigDecimal("0.00238")),
            "birch_sweet", new Printed(new BigDecimal("0.00256"), new BigDecimal("0.00338")),
            "maple_black", new Printed(new BigDecimal("0.00165"), new BigDecimal("0.00353")));

    private record Printed(BigDecimal radial, BigDecimal tangential) {}

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
     * The coefficient of a wood; empty where its shrinkage is not known. Where Table 13-5 differs from what follows from Tables
     * 4-3 and 4-4, for true mahogany by about 70 %, both are given.
     */
    public static Optional<Coefficient> of(Species wood, GrainDirection direction) {
        boolean radial = direction == GrainDirection.RADIAL;
        @Nullable Double shrinkage = radial ? wood.shrinkRadialPct() : wood.shrinkTangentialPct();
        if (shrinkage == null) {
            return Optional.empty();
        }
        BigDecimal derived = coefficient(shrinkage);
        Printed printed = TABLE_13_5.get(wood.id());
        if (printed == null) {
            return Optional.of(new Coefficient(derived, derived));
        }
        BigDecimal other = radial ? printed.radial() : printed.tangential();
        return Optional.of(new Coefficient(derived.min(other), derived.max(other)));
    }

    /** Whether the tables differ on this wood. */
    public static boolean differs(String woodId) {
        return TABLE_13_5.containsKey(woodId);
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
