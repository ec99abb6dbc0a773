package org.scarfwright.necks.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.NutLoad;
import org.scarfwright.joint.StringPath;
import org.scarfwright.joint.StringTension;
import org.scarfwright.measure.Angle;
import org.scarfwright.wood.GrainSlope;
import org.scarfwright.wood.Species;

/**
 * What a set of strings does to the nut and to the section there.
 *
 * @param lines one for each string and one for all together
 * @param facts each with its row on the page of sources
 */
record StringsSheet(List<Line> lines, Line total, List<Fact> facts, Numbers numbers) {
    private static final double MPA_PER_PSI = 0.006894757293168;

    /** One string as the table shows it. */
    record Line(String pitch, String hertz, String mass, String newtons, String down) {}

    /** @param anchor of its row on the page of sources */
    record Fact(String name, String anchor, String value) {
        Fact {
            value = value.endsWith(".") ? value : value + ".";
        }
    }

    /**
     * The same for programs.
     *
     * @param tensions in newtons, in the order of the set
     * @param kept what of the wood's bending strength a one-piece head keeps; null where it is not known
     */
    record Numbers(
            List<Double> tensions,
            double breakDegrees,
            double tension,
            double resultant,
            double down,
            double momentNm,
            double stressMpa,
            @Nullable Kept kept) {}

    /** Bending strength in megapascals, from the lowest to the highest the formula gives. */
    record Kept(double lowest, double highest) {}

    static StringsSheet of(StringsForm.StringSet set, Angle tilt) {
        StringPath path = new StringPath(tilt, set.nutHeight(), set.postHeight(), set.postDistance());
        double turned = Math.max(0, path.breakRadians());
        List<Line> lines = new ArrayList<>();
        List<Double> tensions = new ArrayList<>();
        double sum = 0;
        for (StringsForm.Strand strand : set.strands()) {
            double newtons = StringTension.newtons(
                    strand.gramsPerMetre().doubleValue(),
                    set.scale(),
                    strand.pitch().hertz());
            tensions.add(newtons);
            sum += newtons;
            lines.add(new Line(
                    strand.pitch().name(),
                    decimal(strand.pitch().hertz(), 2),
                    strand.gramsPerMetre().stripTrailingZeros().toPlainString(),
                    decimal(newtons, 2),
                    decimal(new NutLoad(newtons, turned).down(), 2)));
        }
        NutLoad load = new NutLoad(sum, turned);
        double moment = set.section().momentNm(sum, path);
        double stress = set.section().stressMpa(sum, path);
        double slope = tilt.cot();
        Species wood = set.wood();
        Kept kept = wood == null || wood.morPsi() == null ? null : kept(wood.morPsi(), slope);
        return new StringsSheet(
                List.copyOf(lines),
                new Line("all", "", "", decimal(sum, 1), decimal(load.down(), 1)),
                facts(path, load, moment, stress, slope, wood, kept),
                new Numbers(
                        List.copyOf(tensions),
                        path.breakDegrees(),
                        sum,
                        load.resultant(),
                        load.down(),
                        moment,
                        stress,
                        kept));
    }

    private static Kept kept(int morPsi, double slope) {
        double[] percent = GrainSlope.bendingKept(slope);
        double whole = morPsi * MPA_PER_PSI;
        return new Kept(whole * percent[0] / 100, whole * percent[1] / 100);
    }

    private static List<Fact> facts(
            StringPath path,
            NutLoad load,
            double moment,
            double stress,
            double slope,
            @Nullable Species wood,
            @Nullable Kept kept) {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(
                "Break angle over the nut",
                "strings-break-angle",
                path.pressesOnNut()
                        ? decimal(path.breakDegrees(), 1) + "°, with the string level along the neck"
                        : decimal(path.breakDegrees(), 1)
                                + "°: the winding lies as high as the slot, so the string does not press on the nut"));
        facts.add(new Fact(
                "All strings on the nut",
                "strings-nut-load",
                decimal(load.down(), 1) + " N down, of a resultant of " + decimal(load.resultant(), 1)
                        + " N that leans " + decimal(Math.toDegrees(load.breakRadians()) / 2, 1)
                        + "° from square; friction in the slots left out"));
        facts.add(new Fact(
                "Bending at the nut",
                "strings-bending",
                decimal(moment, 2) + " N·m, and " + decimal(stress, 1)
                        + " MPa of bending stress in a rectangle of that width and thickness. A neck is rounded at the back, "
                        + "so the stress in it is higher"));
        facts.add(new Fact(
                "A head sawn from one straight piece at this tilt", "wood-grain-slope", GrainSlope.words(slope)));
        if (wood != null) {
            facts.add(new Fact(
                    "In " + wood.commonName(),
                    "strings-short-grain",
                    kept == null
                            ? "its bending strength is not known, so there is nothing to compare with"
                            : "about " + decimal(kept.lowest(), 0) + " to " + decimal(kept.highest(), 0)
                                    + " MPa of average bending strength would be left in such a head. Strings hardly ever break "
                                    + "one; a fall does. Averages of clear small specimens, never design values"));
        }
        facts.add(new Fact(
                "A scarf instead",
                "strings-short-grain",
                "leaves both parts straight-grained everywhere but on one plane. How much of the strength its glue line keeps is "
                        + "not printed here: this slope is steeper than any whose published efficiency was checked"));
        return List.copyOf(facts);
    }

    private static String decimal(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    }
}
