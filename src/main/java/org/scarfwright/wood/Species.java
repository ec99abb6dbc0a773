package org.scarfwright.wood;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One wood, figures as printed (inch-pound), averages of clear small specimens and never design values. A figure nobody
 * published stays empty.
 *
 * @param id stable short name, such as maple_sugar
 * @param specificGravityBasis the volume it is referred to: at 12 % moisture content, or green
 * @param morPsi modulus of rupture at 12 %, pounds per square inch
 * @param moeMpsi modulus of elasticity at 12 %, millions of pounds per square inch
 * @param sideHardnessLbf at 12 %, pounds
 * @param shrinkRadialPct green to oven-dry, percent of the green size
 * @param botanicalName empty for a wood of the shop whose botanical name nobody gave
 * @param bondingClass how it glues, in the Handbook's words: easily, well, satisfactorily, with difficulty
 * @param own true for a wood the shop added itself
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
        @Nullable String bondingSource,
        boolean own) {

    /** A published wood. */
    public Species(
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
            @Nullable String bondingSource) {
        this(
                id,
                commonName,
                botanicalName,
                specificGravity,
                specificGravityBasis,
                morPsi,
                moeMpsi,
                sideHardnessLbf,
                shrinkRadialPct,
                shrinkTangentialPct,
                shrinkVolumetricPct,
                bondingClass,
                mechanicalSource,
                shrinkageSource,
                bondingSource,
                false);
    }

    /** The two volumes a specific gravity may be referred to. */
    public static final String AT_TWELVE = "12 % MC volume";

    public static final String GREEN = "green volume";

    private static final String FROM_MEMORY = "from memory";
    private static final String SECOND_HAND = "secondary list";

    /** True when any shrinkage figure could not be checked against a printed table. */
    public boolean shrinkageNotChecked() {
        return shrinkageSource.contains(FROM_MEMORY) || shrinkageSource.contains(SECOND_HAND);
    }

    /** True when the radial and tangential figures could not be checked; the volumetric one alone may be in doubt. */
    public boolean linearShrinkageNotChecked() {
        return shrinkageSource.startsWith(FROM_MEMORY) || shrinkageSource.contains(SECOND_HAND);
    }

    public Optional<String> bonding() {
        return Optional.ofNullable(bondingClass);
    }
}
