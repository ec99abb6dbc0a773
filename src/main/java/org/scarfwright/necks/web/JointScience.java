package org.scarfwright.necks.web;

import java.util.List;
import org.scarfwright.web.Science;
import org.scarfwright.web.ScienceRow;
import org.scarfwright.web.ScienceSection;
import org.springframework.stereotype.Component;

/** Sources of every figure of the scarf joint. */
@Component
class JointScience implements Science {
    private static final String DERIVED = "derived here";
    private static final String JOINT = "joint.ScarfJoint";
    private static final String POLYGONS = "joint.ScarfJointPolygonTest";
    private static final String EXAMPLES = "joint.JointPublishedTest";

    @Override
    public ScienceSection section() {
        return new ScienceSection(
                20,
                "Joint",
                "a tilt angle; t thickness of the neck piece and h of the head piece when glued; N neck length, heel end to nut; "
                        + "H head length, nut to tip; w, W widths of neck piece and head; s thickness at the saw; k kerf. No "
                        + "efficiency of a joint is computed: a scarf at 7° to 17° is steeper than the slopes whose published "
                        + "efficiencies were checked. A head thicker than the neck, or an angle beyond 30°, is unusual but has a "
                        + "geometry: the calculator computes it with a note, a design refuses it. What has no geometry is "
                        + "refused everywhere.",
                List.of(
                        length("neck-front", "neck piece, front", "underlaid N; overlaid N − h/sin a"),
                        length("neck-back", "neck piece, back", "front + t·cot a"),
                        length("head-front", "head piece, front", "underlaid H − t/sin a; overlaid H"),
                        length("head-back", "head piece, back", "front + h·cot a"),
                        length("glue-face", "glue face", "underlaid h/sin a; overlaid t/sin a"),
                        ScienceRow.of("joint-glue-area", "glue area", "glue face × the narrower width", DERIVED)
                                .in(JOINT)
                                .provedBy(POLYGONS, "overlap of the two cut faces"),
                        length("seam", "seam on the head’s front, from the nut", "underlaid t/sin a; overlaid none"),
                        length("back-end", "end of the joint on the back, from the nut", "t·cot a − h/sin a"),
                        ScienceRow.of(
                                        "joint-back-of-head",
                                        "head wood on the back, from the end of the joint to the tip",
                                        "H + h·cot a − t/sin a",
                                        DERIVED)
                                .in(JOINT)
                                .provedBy(POLYGONS, "50 000 random joints to 0.001 mm"),
                        ScienceRow.of("joint-wings", "wings, each", "underlaid (W − w)/2; overlaid none", DERIVED)
                                .in(JOINT)
                                .provedBy(POLYGONS, "what is left of the outline"),
                        ScienceRow.of(
                                        "joint-impossible",
                                        "joints that cannot be",
                                        "underlaid t/sin a ≥ H or h/sin a > N + t·cot a; overlaid h/sin a ≥ N or "
                                                + "t/sin a > H + h·cot a",
                                        "derived here: the joint must lie on both pieces")
                                .in(JOINT)
                                .provedBy(POLYGONS, "refused exactly where the outlines fail to meet")
                                .provedBy(
                                        "joint.ImpossibleJointTest",
                                        "the sentences, and that what they suggest is possible"),
                        ScienceRow.of(
                                        "joint-one-blank",
                                        "both parts from one blank, one shared cut",
                                        "neck front + head front + s·cot a + k/sin a; with h = t = s and no kerf "
                                                + "N + H − t·tan(a/2)",
                                        "derived here; about 25 in for an 18 in neck and a 7 in head is common practice")
                                .in(JOINT)
                                .provedBy(POLYGONS, "the parts are laid back and fill the blank")
                                .provedBy("joint.BevelTest", ""),
                        ScienceRow.of(
                                        "joint-bevel",
                                        "run, face and wedge of a bevel",
                                        "s·cot a, s/sin a, s²·cot a/2",
                                        DERIVED)
                                .in("joint.Bevel")
                                .provedBy("joint.BevelTest", "a block cut by a turned half-plane"),
                        ScienceRow.of("joint-kerf", "length a kerf takes", "k/sin a", DERIVED)
                                .in("joint.Bevel")
                                .provedBy("joint.BevelTest", "a turned slot"),
                        ScienceRow.of(
                                        "joint-thinning",
                                        "thinning after the bevel",
                                        "from the back the front stays; from the front it grows by removed·cot a",
                                        DERIVED)
                                .in("joint.Bevel")
                                .provedBy("joint.BevelTest", "a bevelled block, thinned"),
                        ScienceRow.of("joint-gap", "gap of unequal bevels", "glue face × tan(difference)", DERIVED)
                                .in("joint.Bevel")
                                .provedBy("joint.BevelTest", "115 mm, half a degree, 1.0 mm")
                                .provedBy(EXAMPLES, "joint-gaps.csv"),
                        ScienceRow.of(
                                        "joint-out-of-flat",
                                        "front out of flat when unequal bevels are clamped shut",
                                        "underlaid t/sin a, overlaid h/sin a, each × tan(difference)",
                                        DERIVED)
                                .in(JOINT, "joint.Bevel")
                                .provedBy(POLYGONS, "the bevel that is level with what is in front"),
                        ScienceRow.of(
                                        "joint-tuners",
                                        "tuner holes near the seam",
                                        "|hole − seam| of 5 mm or less is worth moving",
                                        "common practice")
                                .in("joint.TunerHoles")
                                .provedBy("joint.PartsBesideTheJointTest", ""),
                        ordered(
                                "head",
                                "head piece as sawn, for each order of thinning",
                                "front C of the table, less r·cot a when r = s − h comes off the front after the bevel; back = "
                                        + "front + thickness at the saw × cot a"),
                        ordered(
                                "neck",
                                "neck piece as sawn, for each order of thinning",
                                "front A of the table; underlaid + r/sin a when the front is thinned after gluing; overlaid "
                                        + "− r/sin a when the back is thinned after gluing; back = front + t·cot a"),
                        ordered(
                                "face",
                                "glue face when glued and in the end",
                                "underlaid thickness then/sin a; overlaid t/sin a throughout"),
                        ordered(
                                "back-end",
                                "end of the joint on the back, for each order",
                                "t·cot a − h/sin a; overlaid and thinned from the back after gluing t·cot a − s/sin a"),
                        ScienceRow.of(
                                        "joint-volute",
                                        "wood for a volute of height v",
                                        "head stock h + v, or neck stock t + v with a bevel through all of it, or a block",
                                        "derived here; the three ways are common practice")
                                .in("joint.VoluteNeed")
                                .provedBy("joint.PartsBesideTheJointTest", ""),
                        ScienceRow.of(
                                        "joint-heel",
                                        "block or layers for a heel",
                                        "depth − t; layers = that over their thickness, rounded up; stock = layers × length "
                                                + "and a kerf between",
                                        "derived here; grain along the neck is common practice")
                                .in("joint.HeelNeed")
                                .provedBy("joint.PartsBesideTheJointTest", ""),
                        ScienceRow.of(
                                        "joint-wedge",
                                        "wedge that falls off a bevel",
                                        "s·cot a long, s thick, at the angle of the joint",
                                        "derived here; its use under a clamp is common practice")
                                .in("joint.WedgeOffcut")
                                .provedBy("joint.PartsBesideTheJointTest", ""),
                        ScienceRow.of(
                                        "joint-saw",
                                        "what a cut asks of a saw",
                                        "reach s/sin a, depth = width of the piece on edge",
                                        DERIVED)
                                .in("joint.SawNeed")
                                .provedBy("joint.SawNeedTest", ""),
                        ScienceRow.of("joint-jig", "jig wedge", "rise = base × tan a, slope = base/cos a", DERIVED)
                                .in("joint.JigWedge")
                                .provedBy("joint.SawNeedTest", "tables of tangents")
                                .provedBy("joint.SawFitTest", ""),
                        ScienceRow.of(
                                        "joint-saw-fit",
                                        "what would fit a saw",
                                        "thickness = reach·sin a, rounded down; angle = asin(s/reach), rounded up",
                                        DERIVED)
                                .in("joint.SawFit")
                                .provedBy("joint.SawFitTest", "what it says fits is put to the saw again"),
                        ScienceRow.of(
                                        "joint-scale",
                                        "what a saw’s scale leaves uncertain",
                                        "one setting r/2, so H·tan(r/2) at the tip; two settings r, so glue face × tan r",
                                        "derived here; half a division as the error of a reading is common practice")
                                .in("joint.ScaleReading")
                                .provedBy("joint.SawFitTest", ""),
                        ScienceRow.of(
                                        "joint-test-cut",
                                        "test cut",
                                        "run s·cot a, and at half a degree more and less; two scraps open at 2a",
                                        "derived here; turning one scrap over is common practice")
                                .in("joint.TestCut")
                                .provedBy("joint.SawFitTest", ""),
                        ScienceRow.of(
                                        "joint-wood",
                                        "wood each arrangement needs",
                                        "short side + 2 mm + truing + s·cot a + k/sin a; width + 2 mm; pieces by the rules of a "
                                                + "match",
                                        "derived here; allowances common practice")
                                .in("matching.PartNeed", "matching.RackForJoint")
                                .provedBy("matching.NeedsTest", "")
                                .provedBy("matching.RackForJointTest", ""),
                        ScienceRow.of("joint-slope", "slope of the scarf", "1 : cot a", DERIVED)
                                .in(JOINT)
                                .provedBy(EXAMPLES, "joint-ratios.csv"),
                        ScienceRow.of(
                                        "joint-area-ratio",
                                        "glue area over the section it joins",
                                        "1/sin a; benchmark at least 10, strongest 1 in 12 or flatter",
                                        "derived here; benchmark Wood Handbook (FPL-GTR-282), ch. 10")
                                .in(JOINT)
                                .provedBy(EXAMPLES, "joint-ratios.csv"),
                        ScienceRow.of(
                                        "joint-angles",
                                        "angles of a design",
                                        "3° to 30°; usual 7° to 17°",
                                        "common practice")
                                .in("joint.DesignRules")
                                .provedBy("joint.ImpossibleJointTest", "")));
    }

    private static ScienceRow ordered(String name, String what, String formula) {
        return ScienceRow.of("joint-order-" + name, what, formula, DERIVED)
                .in("joint.OrderedHead")
                .provedBy(
                        "joint.OrderedHeadPolygonTest",
                        "50 000 necks sawn, thinned and glued as polygons in every order, then measured");
    }

    private static ScienceRow length(String name, String what, String formula) {
        return ScienceRow.of("joint-" + name, what, formula, DERIVED)
                .in(JOINT)
                .provedBy(POLYGONS, "50 000 random joints to 0.001 mm")
                .provedBy(EXAMPLES, "joint-check-values.csv");
    }
}
