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
    private static final String EXAMPLES = "joint.ScarfJointCheckValuesTest";

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
                                .provedBy("joint.BevelTest", "115 mm, half a degree, 1.0 mm"),
                        ScienceRow.of(
                                        "joint-saw",
                                        "what a cut asks of a saw",
                                        "reach s/sin a, depth = width of the piece on edge",
                                        DERIVED)
                                .in("joint.SawNeed")
                                .provedBy("joint.SawNeedTest", ""),
                        ScienceRow.of("joint-jig", "jig wedge", "rise = base × tan a", DERIVED)
                                .in("joint.JigWedge")
                                .provedBy("joint.SawNeedTest", ""),
                        ScienceRow.of("joint-slope", "slope of the scarf", "1 : cot a", DERIVED)
                                .in(JOINT)
                                .provedBy("necks.web.JointPageTest", ""),
                        ScienceRow.of(
                                        "joint-area-ratio",
                                        "glue area over the section it joins",
                                        "1/sin a; benchmark at least 10, strongest 1 in 12 or flatter",
                                        "derived here; benchmark Wood Handbook (FPL-GTR-282), ch. 10")
                                .in(JOINT)
                                .provedBy("necks.web.JointPageTest", ""),
                        ScienceRow.of(
                                        "joint-angles",
                                        "angles of a design",
                                        "3° to 30°; usual 7° to 17°",
                                        "common practice")
                                .in("joint.DesignRules")
                                .provedBy("joint.ImpossibleJointTest", "")));
    }

    private static ScienceRow length(String name, String what, String formula) {
        return ScienceRow.of("joint-" + name, what, formula, DERIVED)
                .in(JOINT)
                .provedBy(POLYGONS, "random joints to 0.001 mm")
                .provedBy(EXAMPLES, "worked examples");
    }
}
