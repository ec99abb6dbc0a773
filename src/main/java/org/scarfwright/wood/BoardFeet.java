package org.scarfwright.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.scarfwright.measure.Volume;

/**
 * Board feet, for display only: 144 cubic inches, about 2.36 litres.
 *
 * <p><b>Source:</b> definition; one inch is 25.4 mm.
 */
public final class BoardFeet {
    /** 144 × 25.4³. */
    private static final BigDecimal CUBIC_MM = new BigDecimal("2359737.216");

    private BoardFeet() {}

    /** To 0.01, to the nearest. */
    public static BigDecimal of(Volume volume) {
        return volume.toMm3().divide(CUBIC_MM, 2, RoundingMode.HALF_UP);
    }
}
