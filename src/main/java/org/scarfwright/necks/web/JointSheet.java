package org.scarfwright.necks.web;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.Bevel;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.JointRefusal;
import org.scarfwright.joint.JointRow;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.wood.GrainSlope;

/**
 * What the joint page shows: both arrangements of one neck, beside each other.
 *
 * @param unit of the drawings, in words
 * @param rows of the table that compares them
 * @param facts that hold for both, since they depend on the angle alone
 * @param notes what is unusual
 */
record JointSheet(String unit, List<Side> sides, List<Row> rows, List<Fact> facts, List<String> notes) {
    private static final Angle HALF_A_DEGREE = new Angle(500);

    /**
     * One arrangement.
     *
     * @param side null when there is no such joint
     * @param face null when there is no such joint
     * @param back null when there is no such joint
     * @param refusals why there is none, in sentences
     */
    record Side(
            String word,
            String name,
            String lead,
            @Nullable JointDrawing side,
            @Nullable JointDrawing face,
            @Nullable JointDrawing back,
            List<String> refusals) {}

    /**
     * One line of the table; a dash where an arrangement cannot be.
     *
     * @param anchor of its row on the page of sources
     */
    record Row(String letter, String anchor, String label, String underlaid, String overlaid) {}

    /** @param anchor of its row on the page of sources */
    record Fact(String anchor, String name, String value) {}

    /** @param kerf of the cut two parts share; zero for the bare sum */
    static JointSheet of(JointInput input, Length kerf, Shown shown) {
        Made underlaid = Made.of(input.with(Arrangement.UNDERLAID));
        Made overlaid = Made.of(input.with(Arrangement.OVERLAID));
        return new JointSheet(
                shown.unit() == LengthUnit.INCH
                        ? "inches"
                        : shown.unit() == LengthUnit.CM ? "centimetres" : "millimetres",
                List.of(underlaid.side(shown.unit()), overlaid.side(shown.unit())),
                new Rows(underlaid.joint(), overlaid.joint(), kerf, shown).all(),
                facts(input, shown),
                JointNotes.of(input));
    }

    /** The joint, or why it cannot be. */
    private record Made(Arrangement arrangement, @Nullable ScarfJoint joint, List<JointRefusal> refusals) {
        static Made of(JointInput input) {
            List<JointRefusal> refusals = ScarfJoint.refusals(input);
            return new Made(input.arrangement(), refusals.isEmpty() ? ScarfJoint.of(input) : null, refusals);
        }

        Side side(LengthUnit unit) {
            boolean under = arrangement == Arrangement.UNDERLAID;
            return new Side(
                    arrangement.word(),
                    under ? "Underlaid head" : "Overlaid head",
                    under
                            ? "The head lies under the neck. The neck’s cut face is the first part of the head’s front; "
                                    + "a seam crosses it. Wants a long neck piece and a short head piece."
                            : "The head lies on the neck’s bevel. Its front is one piece from the nut to the tip; the joint "
                                    + "shows on the sides and hides under the fingerboard. Wants a short neck piece and a "
                                    + "long head piece.",
                    joint == null ? null : JointDrawing.side(joint, unit),
                    joint == null ? null : JointDrawing.face(joint, unit),
                    joint == null ? null : JointDrawing.back(joint, unit),
                    refusals.stream()
                            .map(r -> JointForm.label(r.field()) + " " + r.reason() + ".")
                            .toList());
        }
    }

    private record Rows(
            @Nullable ScarfJoint underlaid, @Nullable ScarfJoint overlaid, Length kerf, Shown shown) {
        List<Row> all() {
            return List.of(
                    row(JointRow.NECK_FRONT, "joint-neck-front", "Neck piece, front", j -> shown.length(j.neckFront())),
                    row(JointRow.NECK_BACK, "joint-neck-back", "Neck piece, back", j -> shown.length(j.neckBack())),
                    row(JointRow.HEAD_FRONT, "joint-head-front", "Head piece, front", j -> shown.length(j.headFront())),
                    row(JointRow.HEAD_BACK, "joint-head-back", "Head piece, back", j -> shown.length(j.headBack())),
                    row(JointRow.GLUE_FACE, "joint-glue-face", "Glue face", j -> shown.length(j.glueFace())),
                    row(null, "joint-glue-area", "Glue area", j -> shown.fmt().area(j.glueArea())),
                    row(
                            JointRow.SEAM,
                            "joint-seam",
                            "Seam on the head’s front, from the nut",
                            j -> j.hasSeam() ? shown.length(j.seamFromNut()) : "no seam"),
                    row(
                            null,
                            "joint-seam",
                            "The seam against the outline",
                            j -> j.hasSeam() ? againstOutline(j) : "no seam"),
                    row(
                            JointRow.BACK_END,
                            "joint-back-end",
                            "End of the joint on the back, from the nut; + toward the tip",
                            this::backEnd),
                    row(
                            JointRow.BACK_OF_HEAD,
                            "joint-back-of-head",
                            "Head wood on the back, from there to the tip",
                            j -> shown.length(j.backOfHead())),
                    row(
                            JointRow.WING,
                            "joint-wings",
                            "Wings beside the neck wood",
                            j -> j.wingWidth().isPositive() ? "two of " + shown.length(j.wingWidth()) : "none"),
                    row(
                            null,
                            "joint-gap",
                            "Gap at one end for each half degree the bevels differ, fronts held flush",
                            j -> shown.fine(Bevel.gap(j.glueFace(), HALF_A_DEGREE))),
                    row(
                            null,
                            "joint-out-of-flat",
                            "Or, clamped shut, the front out of flat by",
                            j -> shown.fine(Bevel.gap(j.bevelInFront(), HALF_A_DEGREE))),
                    row(
                            null,
                            "joint-one-blank",
                            "Both parts from one blank as thick as the thicker part"
                                    + (kerf.isPositive() ? ", with a kerf of " + shown.length(kerf) : ""),
                            j -> shown.length(j.onePieceLength(
                                    j.input().neckThickness().max(j.input().headThickness()), kerf))));
        }

        private Row row(@Nullable JointRow row, String anchor, String label, Function<ScarfJoint, String> figure) {
            return new Row(
                    row == null ? "" : row.letter(),
                    anchor,
                    label,
                    underlaid == null ? "–" : figure.apply(underlaid),
                    overlaid == null ? "–" : figure.apply(overlaid));
        }

        private String againstOutline(ScarfJoint joint) {
            return shown.decimal(
                            100
                                    * joint.seamFromNutMm()
                                    / joint.input().headLength().mm(),
                            0) + " % of the way to the tip, " + shown.length(joint.headFront())
                    + " of head wood beyond it";
        }

        private String backEnd(ScarfJoint joint) {
            Length end = joint.backEndFromNut();
            return (end.isPositive() ? "+" : "") + shown.length(end);
        }
    }

    private static List<Fact> facts(JointInput input, Shown shown) {
        Angle angle = input.angle();
        double slope = angle.cot();
        double[] kept = GrainSlope.bendingKept(slope);
        String extrapolated =
                GrainSlope.isExtrapolated(slope) ? ", beyond the printed rows and so an extrapolation" : "";
        return List.of(
                new Fact("joint-slope", "Slope of the scarf", "1 : " + shown.decimal(slope, 2)),
                new Fact(
                        "joint-area-ratio",
                        "Glue area over the section it joins",
                        shown.decimal(1 / angle.sin(), 2)
                                + ". The Wood Handbook’s benchmark for a scarf is at least 10, and "
                                + "1 in 12 or flatter is strongest; a tilted head is steeper than that."),
                new Fact(
                        "wood-grain-slope",
                        "If the head were sawn from one straight piece instead",
                        "its grain would run out at 1 in " + shown.decimal(slope, 2) + ", and about "
                                + shown.decimal(kept[0], 0) + " to " + shown.decimal(kept[1], 0)
                                + " % of the bending strength would be left (Hankinson’s formula, fitted to Wood Handbook "
                                + "Table 5-12" + extrapolated + "). A scarf leaves both parts straight-grained "
                                + "everywhere but on one plane."),
                new Fact(
                        "joint-thinning",
                        "Thinning the head piece after its bevel is cut",
                        "From its back the front keeps its length C. From its front, the front grows by "
                                + shown.decimal(slope, 2) + " for every unit taken off."));
    }
}
