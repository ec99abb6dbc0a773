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
    private static final String CHANGE = "wood.DimensionalChange";
    private static final String DENSITY = "wood.Density";
    private static final String DENSITY_TEST = "wood.DensityTest";
    private static final String SLOPE = "wood.GrainSlope";
    private static final String SLOPE_TEST = "wood.GrainSlopeTest";
    private static final String WORDS = "wood.WoodWordsTest";

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
                                        "wood-humidity",
                                        "humidity that keeps wood at a moisture",
                                        "the same equation solved for h by halving; refused where no humidity from 5 to 90 % "
                                                + "keeps it",
                                        "Wood Handbook eq. 4-5; solved here")
                                .in("wood.EquilibriumMoisture")
                                .provedBy(
                                        "wood.EquilibriumMoistureTest",
                                        "the printed cells the other way round, as far as their digits tell"),
                        ScienceRow.of(
                                        "wood-readiness",
                                        "is a piece ready to glue",
                                        "driest ≤ MC ≤ wettest, and |MC − EMC of the shop’s air| ≤ the points two parts may "
                                                + "differ",
                                        "common practice; the limits are the shop’s rules")
                                .in("wood.Readiness", "rack.PieceReadiness")
                                .provedBy("wood.ReadinessTest", "both limits, and every sentence"),
                        ScienceRow.of(
                                        "wood-coefficient",
                                        "coefficient of dimensional change",
                                        "C = (S/100/30)/(1 − (S/100)·20/30), rounded to 0.00001",
                                        "the rule by which Wood Handbook Table 13-5 follows from Table 4-3")
                                .in(CHANGE)
                                .provedBy(
                                        MOVEMENT, "twelve woods of both tables, to one unit of the last printed digit"),
                        ScienceRow.of(
                                        "wood-coefficient-differs",
                                        "the same where the two tables differ",
                                        "both figures are shown, as a range: true mahogany (about 70 % apart), sweet birch, "
                                                + "black maple",
                                        "Wood Handbook Tables 4-3, 4-4 and 13-5; mahogany’s 0.00172 and 0.00238 from memory")
                                .in(CHANGE)
                                .provedBy(MOVEMENT, "the noted rows of the table"),
                        ScienceRow.of(
                                        "wood-movement",
                                        "movement",
                                        "ΔD = D·C·(MC2 − MC1), 6 to 14 %",
                                        "Wood Handbook ch. 13")
                                .in(CHANGE)
                                .provedBy(
                                        MOVEMENT,
                                        "5 in × 0.00129 × 3 = 0.019 in and 232 mm × 0.00245 × 3 = 1.7 mm, as printed"),
                        ScienceRow.of(
                                        "wood-seam",
                                        "step at a seam over the year",
                                        "w·|C1 − C2|·(MC2 − MC1)/2 at each edge, both woods free",
                                        "derived here from the movement of Wood Handbook ch. 13")
                                .in("wood.SeamStep")
                                .provedBy("wood.SeamStepTest", "hard maple against walnut, worked by hand; ranges"),
                        ScienceRow.of("wood-density", "density", "1000·G·(1 + MC/100) kg/m³", "Wood Handbook eq. 4-14")
                                .in(DENSITY)
                                .provedBy(DENSITY_TEST, "worked by hand"),
                        ScienceRow.of(
                                        "wood-gravity",
                                        "specific gravity at another moisture",
                                        "G·(1 − S·(30 − x0)/3000)/(1 − S·(30 − x)/3000), S volumetric, 0 to 30 %",
                                        "definitions of Wood Handbook ch. 4: the dry mass stays, the volume shrinks in proportion")
                                .in(DENSITY)
                                .provedBy(
                                        DENSITY_TEST,
                                        "eleven woods printed at both volumes, to 0.02; green figures from memory"),
                        ScienceRow.of(
                                        "wood-weight",
                                        "weight of a piece or a finished blank",
                                        "density × volume, to the gram; single boards differ by a tenth and more",
                                        "definition")
                                .in(DENSITY)
                                .provedBy(DENSITY_TEST, "1.28 litres at 705.6 kg/m³"),
                        ScienceRow.of("wood-board-foot", "board feet", "volume/144 in³, for display only", "definition")
                                .in("wood.BoardFeet")
                                .provedBy(DENSITY_TEST, "boards of whole board feet; 2.3597 litres"),
                        ScienceRow.of(
                                        "wood-two-slopes",
                                        "two slopes of grain at once",
                                        "n = 1/√((1/n1)² + (1/n2)²)",
                                        "Wood Handbook ch. 5")
                                .in(SLOPE)
                                .provedBy(SLOPE_TEST, "1 in 12 with 1 in 18 is printed as 1 in 10, by hand 9.985"),
                        ScienceRow.of(
                                        "wood-grain-slope",
                                        "strength kept at a slope",
                                        "at a printed row the row; between rows, in bending, Hankinson: "
                                                + "Q/(P·sin²a + Q·cos²a), Q/P 0.040 to 0.045, and the rows on both sides for impact "
                                                + "and compression; beyond 1:25 … 1:5 an extrapolation and labelled so",
                                        "Wood Handbook Table 5-12; Hankinson’s formula, ratio fitted to it")
                                .in(SLOPE)
                                .provedBy(
                                        SLOPE_TEST,
                                        "every row of the table; ranges at 1 in 10 and 1 in 5 worked by hand"),
                        ScienceRow.of(
                                        "wood-species",
                                        "species figures",
                                        "as printed; a blank stays blank; psi, lbf also shown as 6894.757 Pa, 4.44822 N",
                                        "a source in every row; from memory is shown as not checked; the shop’s own are marked as "
                                                + "entered by it")
                                .in("wood.Species")
                                .provedBy(
                                        "rack.SpeciesCatalogContract",
                                        "every cell against the copied figures, on every database"),
                        ScienceRow.of(
                                        "wood-bonding",
                                        "class of bonding",
                                        "easily, well, satisfactorily, with difficulty; in plain words",
                                        "Wood Handbook Table 10-1; gluing within the hour is common practice")
                                .in("wood.Bonding")
                                .provedBy(WORDS, "every class of the published figures"),
                        ScienceRow.of(
                                        "wood-cautions",
                                        "dust, machines, allergy",
                                        "for every wood; woods some people react to by genus",
                                        "IARC Group 1; limits of OSHA, NIOSH, HSE and EU; allergy from memory of HSE Woodworking "
                                                + "Sheet 30 and shown as not checked")
                                .in("wood.Caution")
                                .provedBy(WORDS, ""),
                        ScienceRow.of(
                                        "wood-protected",
                                        "look up the appendices",
                                        "Dalbergia, Guibourtia, Swietenia, Cedrela, Khaya, Pterocarpus, Handroanthus",
                                        "from memory; a flag to look, never a verdict")
                                .in("wood.ProtectedWood")
                                .provedBy(WORDS, "every genus")));
    }
}
