package org.scarfwright.wood;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One wood, figures as printed (inch-pound), averages of clear small specimens and never design values. A figure nobody
 * published stays empty.
 *
 * @param id stable short name, such as maple_sugar
 * @param bondingClass how it glues, in the Handbook's words: easily, well, satisfactorily, with difficulty
 */
public record Species(
        String id,
        String commonName,
        String botanicalName,
        @Nullable Double specificGravity,
        @Nullable String specificGravityBasis,
        @Nullable Integer morPsi,
        @Nullable Double moeMpsi,
        @Nullable Integer sideHardnessLbf,
        @Nullable Double shrinkRadialPct,
        @Nullable Double shrinkTangentialPct,
        @Nullable Double shrinkVolumetricPct,
        @Nullable String bondingClass,
        String mechanicalSource,
        String shrinkageSource,
        String bondingSource) {

    /** True when the shrinkage figures could not be checked against a printed table. */
    public boolean shrinkageNotChecked() {
        return shrinkageSource.contains("from memory");
    }

    public Optional<String> bonding() {
        return Optional.ofNullable(bondingClass);
    }
}
