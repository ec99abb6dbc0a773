package org.scarfwright.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Volume;

/** Weight of wood. A figure for a species is an average; a single board can easily be a tenth lighter or heavier. */
public final class Density {
    /** Where a cell wall is full of water, as the Handbook takes it for shrinkage. */
    private static final double FIBRE_SATURATION = 30;

    private static final Moisture WETTEST = new Moisture(3000);
    private static final Moisture TWELVE = new Moisture(1200);

    private Density() {}

    /**
     * ρ = 1000·G·(1 + x/100) in kg/m³, wood and its water together.
     *
     * <p><b>Source:</b> Forest Products Laboratory, Wood Handbook (FPL-GTR-282), equation 4-14.
     *
     * @param specificGravity G, oven-dry mass over the volume at moisture content x
     */
    public static double kgPerCubicMetre(double specificGravity, Moisture moisture) {
        return 1000 * specificGravity * (1 + moisture.toPercent().doubleValue() / 100);
    }

    /**
     * Specific gravity referred to the volume at a moisture content, from the one the species' figures are referred to: the
     * oven-dry mass stays, the volume shrinks in proportion below 30 %. G<sub>x</sub> = G<sub>b</sub>/(1 − S<sub>x</sub>/100)
     * with S<sub>x</sub> = S·(30 − x)/30 from the green volume.
     *
     * <p><b>Source:</b> definitions of Wood Handbook (FPL-GTR-282), chapter 4; proportional shrinkage below 30 % is its chapter
     * 4 and 13 too.
     *
     * @param moisture x, 0 to 30 %
     * @return empty where the specific gravity is not known, where the volumetric shrinkage the conversion asks for is not, and
     *     above 30 %
     */
    public static Optional<Double> specificGravityAt(Species wood, Moisture moisture) {
        Double gravity = wood.specificGravity();
        if (gravity == null || moisture.compareTo(WETTEST) > 0) {
            return Optional.empty();
        }
        boolean atTwelve = Species.AT_TWELVE.equals(wood.specificGravityBasis());
        if (moisture.equals(atTwelve ? TWELVE : WETTEST)) {
            return Optional.of(gravity);
        }
        Double shrinkage = wood.shrinkVolumetricPct();
        if (shrinkage == null) {
            return Optional.empty();
        }
        double from = atTwelve ? volumeLeft(shrinkage, TWELVE) : 1;
        return Optional.of(gravity * from / volumeLeft(shrinkage, moisture));
    }

    /** The same as a density of wood and water in kg/m³. */
    public static Optional<Double> of(Species wood, Moisture moisture) {
        return specificGravityAt(wood, moisture).map(gravity -> kgPerCubicMetre(gravity, moisture));
    }

    /** What wood of a density weighs, in whole grams, to the nearest. */
    public static BigDecimal grams(double kgPerCubicMetre, Volume volume) {
        return volume.toMm3()
                .multiply(BigDecimal.valueOf(kgPerCubicMetre))
                .movePointLeft(6)
                .setScale(0, RoundingMode.HALF_UP);
    }

    /**
     * What a piece or a finished blank weighs at a moisture content, in whole grams.
     *
     * @param volume at that moisture content, as measured
     * @return empty where {@link #specificGravityAt} is
     */
    public static Optional<BigDecimal> grams(Species wood, Moisture moisture, Volume volume) {
        return of(wood, moisture).map(density -> grams(density, volume));
    }

    /** The share of the green volume that is left at a moisture content. */
    private static double volumeLeft(double shrinkagePct, Moisture moisture) {
        double x = moisture.toPercent().doubleValue();
        return 1 - shrinkagePct / 100 * (FIBRE_SATURATION - x) / FIBRE_SATURATION;
    }
}
