package org.scarfwright.shop;

import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;

/**
 * The shop's rules. Defaults are common practice, no single source, but for the shortest machined piece, where published
 * figures disagree (200 to 300 mm) and the safer is taken.
 *
 * @param unit the unit a bare number means on a page
 * @param currency what amounts are written with, such as EUR
 * @param planingPerFace what is planed off each face after the warp is out
 * @param edgeAllowance width taken off a piece to joint both its edges, together
 * @param neckStraightness how far a sawn neck part may still be out before planing
 * @param shortestMachined the shortest piece the planer may hold
 * @param usableRestLength a rest at least this long (and wide, below) goes back to the rack
 * @param usableRestWidth see above
 * @param neckGrainSlope a neck's grain runs at 1 in this or flatter
 * @param driest lowest moisture to glue at
 * @param wettest highest moisture to glue at
 * @param moistureApart how far the two parts of a neck may differ
 * @param searchSeconds how long a search may look for a better plan before the best so far is kept with its gap, 1 to 600
 * @param searchMemoryMb megabytes a search may take on top of what the program holds, before it does the same, 64 to 65536
 */
public record ShopSettings(
        LengthUnit unit,
        String currency,
        Length planingPerFace,
        Length edgeAllowance,
        Length neckStraightness,
        Length shortestMachined,
        Length usableRestLength,
        Length usableRestWidth,
        int neckGrainSlope,
        Moisture driest,
        Moisture wettest,
        MoistureChange moistureApart,
        int searchSeconds,
        int searchMemoryMb) {
    /** What a new shop begins with. */
    public static final int SEARCH_SECONDS = 20;

    /** What a new shop begins with. */
    public static final int SEARCH_MEMORY_MB = 2048;

    /** Rules whose searches are limited as in a new shop. */
    public ShopSettings(
            LengthUnit unit,
            String currency,
            Length planingPerFace,
            Length edgeAllowance,
            Length neckStraightness,
            Length shortestMachined,
            Length usableRestLength,
            Length usableRestWidth,
            int neckGrainSlope,
            Moisture driest,
            Moisture wettest,
            MoistureChange moistureApart) {
        this(
                unit,
                currency,
                planingPerFace,
                edgeAllowance,
                neckStraightness,
                shortestMachined,
                usableRestLength,
                usableRestWidth,
                neckGrainSlope,
                driest,
                wettest,
                moistureApart,
                SEARCH_SECONDS,
                SEARCH_MEMORY_MB);
    }
}
