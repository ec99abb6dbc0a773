package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Moisture;
import org.scarfwright.shop.ShopAir;
import org.scarfwright.wood.Bonding;
import org.scarfwright.wood.Caution;
import org.scarfwright.wood.Density;
import org.scarfwright.wood.DimensionalChange;
import org.scarfwright.wood.DimensionalChange.Coefficient;
import org.scarfwright.wood.EquilibriumMoisture;
import org.scarfwright.wood.GrainDirection;
import org.scarfwright.wood.ProtectedWood;
import org.scarfwright.wood.SeamStep;
import org.scarfwright.wood.Species;

/**
 * One wood as its page shows it.
 *
 * @param figures what is known of it, each with its source
 * @param year what the wood does over the shop's year
 */
record SpeciesView(
        String id,
        String name,
        String botanical,
        boolean own,
        boolean lookUpAppendix,
        List<Figure> figures,
        String year,
        String bonding,
        List<Caution> cautions) {
    static final Length SHOWN_WIDTH = Length.ofMm(60);

    private static final Moisture TWELVE = new Moisture(1200);
    private static final String NOT_FOUND = "not known: no published figure was found, and none is invented";
    private static final String NOT_ENTERED = "not known: the shop entered none";
    private static final double MPA_PER_PSI = 0.006894757293168;
    private static final double NEWTON_PER_LBF = 4.4482216152605;

    /**
     * One line of the table.
     *
     * @param anchor of its row on the page of sources
     * @param source where this figure stands
     * @param notChecked true when it could not be compared with the printed table
     */
    record Figure(String name, String anchor, String value, String source, boolean notChecked) {}

    static SpeciesView of(Species wood, ShopAir air) {
        List<Caution> cautions = new ArrayList<>();
        Caution.sensitiser(wood).ifPresent(cautions::add);
        cautions.addAll(Caution.ALWAYS);
        return new SpeciesView(
                wood.id(),
                wood.commonName(),
                wood.botanicalName(),
                wood.own(),
                ProtectedWood.lookUpAppendix(wood),
                figures(wood),
                year(wood, air),
                Bonding.note(wood),
                List.copyOf(cautions));
    }

    private static List<Figure> figures(Species wood) {
        String none = wood.own() ? NOT_ENTERED : NOT_FOUND;
        List<Figure> figures = new ArrayList<>();
        Double gravity = wood.specificGravity();
        String basis = Species.AT_TWELVE.equals(wood.specificGravityBasis())
                ? ", referred to its volume at 12 %"
                : ", referred to its green volume";
        figures.add(new Figure(
                "Specific gravity",
                "wood-species",
                gravity == null ? none : rounded(gravity, 2) + basis,
                wood.mechanicalSource(),
                false));
        Optional<Double> density = Density.of(wood, TWELVE);
        boolean fromGreen = Species.GREEN.equals(wood.specificGravityBasis());
        figures.add(new Figure(
                "Density at 12 %",
                fromGreen ? "wood-gravity" : "wood-density",
                density.map(d -> rounded(d, 0) + " kg/m³"
                                + (fromGreen ? ", worked out from the green figure and the volumetric shrinkage" : ""))
                        .orElse("not known: it follows from figures that are not known"),
                fromGreen ? wood.mechanicalSource() + "; " + wood.shrinkageSource() : wood.mechanicalSource(),
                fromGreen && density.isPresent() && wood.shrinkageNotChecked()));
        Integer mor = wood.morPsi();
        figures.add(new Figure(
                "Bending strength (modulus of rupture) at 12 %",
                "wood-species",
                mor == null ? none : mor + " psi, " + rounded(mor * MPA_PER_PSI, 0) + " MPa",
                wood.mechanicalSource(),
                false));
        Double moe = wood.moeMpsi();
        figures.add(new Figure(
                "Stiffness (modulus of elasticity) at 12 %",
                "wood-species",
                moe == null ? none : rounded(moe, 2) + " million psi, " + rounded(moe * 1000 * MPA_PER_PSI, 1) + " GPa",
                wood.mechanicalSource(),
                false));
        Integer hardness = wood.sideHardnessLbf();
        figures.add(new Figure(
                "Side hardness at 12 %",
                "wood-species",
                hardness == null ? none : hardness + " lbf, " + rounded(hardness * NEWTON_PER_LBF / 1000, 1) + " kN",
                wood.mechanicalSource(),
                false));
        figures.add(shrinkage("Radial shrinkage, green to oven-dry", wood, wood.shrinkRadialPct(), true));
        figures.add(shrinkage("Tangential shrinkage, green to oven-dry", wood, wood.shrinkTangentialPct(), true));
        figures.add(shrinkage("Volumetric shrinkage, green to oven-dry", wood, wood.shrinkVolumetricPct(), false));
        figures.add(coefficient("Movement for each 1 % of moisture, quarter-sawn", wood, GrainDirection.RADIAL));
        figures.add(coefficient("Movement for each 1 % of moisture, flat-sawn", wood, GrainDirection.TANGENTIAL));
        return List.copyOf(figures);
    }

    private static Figure shrinkage(String name, Species wood, @Nullable Double percent, boolean linear) {
        boolean doubtful = linear ? wood.linearShrinkageNotChecked() : wood.shrinkageNotChecked();
        return new Figure(
                name,
                "wood-species",
                percent == null ? (wood.own() ? NOT_ENTERED : NOT_FOUND) : rounded(percent, 1) + " %",
                wood.shrinkageSource(),
                percent != null && doubtful);
    }

    private static Figure coefficient(String name, Species wood, GrainDirection direction) {
        Optional<Coefficient> found = DimensionalChange.of(wood, direction);
        boolean range = found.filter(Coefficient::isRange).isPresent();
        return new Figure(
                name,
                range ? "wood-coefficient-differs" : "wood-coefficient",
                found.map(c -> words(c) + (range ? ": published figures differ, so both are given" : ""))
                        .orElse("not known: it follows from a shrinkage that is not known"),
                range ? wood.shrinkageSource() + "; Wood Handbook Table 13-5" : wood.shrinkageSource(),
                found.isPresent() && movementNotChecked(wood));
    }

    /** True mahogany's second figure is from memory, whatever its first is. */
    static boolean movementNotChecked(Species wood) {
        return wood.linearShrinkageNotChecked() || wood.id().equals("mahogany_true");
    }

    static String words(Coefficient coefficient) {
        return coefficient.isRange()
                ? coefficient.low().toPlainString() + " to "
                        + coefficient.high().toPlainString()
                : coefficient.low().toPlainString();
    }

    private static String year(Species wood, ShopAir air) {
        Moisture low =
                EquilibriumMoisture.of(air.driest().celsius(), air.driest().humidity());
        Moisture high =
                EquilibriumMoisture.of(air.dampest().celsius(), air.dampest().humidity());
        String over = "Over the shop’s year wood goes from about " + tenth(low) + " to " + tenth(high) + " %";
        Optional<String> refusal =
                DimensionalChange.moistureRefusal(low).or(() -> DimensionalChange.moistureRefusal(high));
        if (refusal.isPresent()) {
            return over + ". Movement is worked out from 6 to 14 % only.";
        }
        SeamStep.Year year = new SeamStep.Year(low, high);
        return over + ". " + SHOWN_WIDTH + " of it move " + moves(wood, GrainDirection.RADIAL, year)
                + " where it is quarter-sawn and " + moves(wood, GrainDirection.TANGENTIAL, year)
                + " where it is flat-sawn.";
    }

    private static String moves(Species wood, GrainDirection direction, SeamStep.Year year) {
        return DimensionalChange.of(wood, direction)
                .map(c -> {
                    String low = millimetres(move(c.low(), year));
                    String high = millimetres(move(c.high(), year));
                    return (low.equals(high) ? low : low + " to " + high) + " mm";
                })
                .orElse("by an unknown amount");
    }

    private static Length move(BigDecimal coefficient, SeamStep.Year year) {
        return DimensionalChange.movement(SHOWN_WIDTH, coefficient, year.lowest(), year.highest());
    }

    /** To 0.01 mm: a step is felt below a tenth. */
    static String millimetres(Length length) {
        return length.toMm().setScale(2, RoundingMode.HALF_UP).toPlainString();
    }

    static String tenth(Moisture moisture) {
        return moisture.toPercent().setScale(1, RoundingMode.HALF_UP).toPlainString();
    }

    private static String rounded(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    }
}
