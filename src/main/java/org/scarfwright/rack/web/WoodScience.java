package org.scarfwright.rack.web;

import java.util.List;
import org.scarfwright.web.Science;
import org.scarfwright.web.ScienceRow;
import org.scarfwright.web.ScienceSection;
import org.springframework.stereotype.Component;

/** Sources of every figure about a wood. */
@Component
class WoodScience implements Science {
    private static final String MOVEMENT = "wood.WoodMovementTest";

    @Override
    public ScienceSection section() {
        return new ScienceSection(
                30,
                "Wood",
                "D a size across the grain; T temperature in °C; rh relative humidity; S total shrinkage in percent; MC moisture "
                        + "in percent. Wood Handbook is: Forest Products Laboratory, Wood Handbook: Wood as an Engineering "
                        + "Material, FPL-GTR-282. Its figures are averages of clear small specimens, never design values.",
                List.of(
                        ScienceRow.of(
                                        "wood-emc",
                                        "equilibrium moisture",
                                        "(1800/W)·[Kh/(1−Kh) + (K1Kh + 2K1K2K²h²)/(1 + K1Kh + K1K2K²h²)], h = rh/100; "
                                                + "−1.1 to 54.4 °C, 5 to 90 %",
                                        "Wood Handbook eq. 4-5")
                                .in("wood.EquilibriumMoisture")
                                .provedBy(
                                        "wood.EquilibriumMoistureTest",
                                        "70 printed cells, each within half a printed digit (0.05 point) and 0.0025 for the "
                                                + "rounded constants"),
                        ScienceRow.of(
                                        "wood-coefficient",
                                        "coefficient of dimensional change",
                                        "C = (S/100/30)/(1 − (S/100)·20/30), rounded to 0.00001",
                                        "the rule by which Wood Handbook Table 13-5 follows from Table 4-3")
                                .in("wood.DimensionalChange")
                                .provedBy(MOVEMENT, "hard maple 0.00353 and 0.00165, black walnut 0.00190"),
                        ScienceRow.of(
                                        "wood-coefficient-mahogany",
                                        "the same, true mahogany",
                                        "two figures about 70 % apart; a range is shown",
                                        "Wood Handbook Tables 4-4 and 13-5; the latter’s 0.00172 and 0.00238 from memory")
                                .in("wood.DimensionalChange")
                                .provedBy(MOVEMENT, ""),
                        ScienceRow.of(
                                        "wood-movement",
                                        "movement",
                                        "ΔD = D·C·(MC2 − MC1), 6 to 14 %",
                                        "Wood Handbook ch. 13")
                                .in("wood.DimensionalChange")
                                .provedBy(MOVEMENT, "5 in × 0.00129 × 3 = 0.019 in as printed"),
                        ScienceRow.of("wood-density", "density", "1000·G·(1 + MC/100) kg/m³", "Wood Handbook eq. 4-14")
                                .in("wood.Density")
                                .provedBy(MOVEMENT, ""),
                        ScienceRow.of(
                                        "wood-two-slopes",
                                        "two slopes of grain at once",
                                        "n = 1/√((1/n1)² + (1/n2)²)",
                                        "Wood Handbook ch. 5")
                                .in("wood.GrainSlope")
                                .provedBy("wood.GrainSlopeTest", "1 in 12 with 1 in 18 is printed as 1 in 10"),
                        ScienceRow.of(
                                        "wood-grain-slope",
                                        "bending strength kept at a slope",
                                        "Hankinson: Q/(P·sin²a + Q·cos²a), Q/P 0.040 to 0.045; beyond 1:25 … 1:5 an "
                                                + "extrapolation and labelled so",
                                        "Hankinson’s formula, ratio fitted to Wood Handbook Table 5-12")
                                .in("wood.GrainSlope")
                                .provedBy("wood.GrainSlopeTest", "every row of the table within 2 points"),
                        ScienceRow.of(
                                        "wood-species",
                                        "species figures",
                                        "as printed; a blank stays blank",
                                        "a source in every row; from memory is shown as not checked")
                                .in("wood.Species")
                                .provedBy(
                                        "rack.SpeciesCatalogContract",
                                        "every cell against the copied figures, on every database"),
                        ScienceRow.of(
                                        "wood-protected",
                                        "look up the appendices",
                                        "Dalbergia, Guibourtia, Swietenia, Cedrela, Khaya, Pterocarpus, Handroanthus",
                                        "from memory; a flag to look, never a verdict")
                                .in("wood.ProtectedWood")
                                .provedBy("rack.web.WoodWebTest", "")));
    }
}
