package org.scarfwright.wood;

import org.scarfwright.measure.Moisture;

/** Weight of wood. */
public final class Density {
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
}
