package org.scarfwright.necks.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.Bevel;
import org.scarfwright.joint.JigWedge;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.JointRefusal;
import org.scarfwright.joint.JointRow;
import org.scarfwright.joint.SawLimits;
import org.scarfwright.joint.SawNeed;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Saw;
import org.scarfwright.web.Formats;
import org.scarfwright.wood.GrainSlope;

/**
 * What the joint page shows: both arrangements of one neck, beside each other.
 *
 * @param rows of the table that compares them
 * @param facts that hold for both, since they depend on the angle alone
 * @param saws what each saw of the shop says to the two cuts
 * @param notes what is unusual
 */
record JointSheet(List<Side> sides, List<Row> rows, List<Fact> facts, List<SawLine> saws, List<String> notes) {
    private static final Angle HALF_A_DEGREE = new Angle(500);
    private static final Length WEDGE_BASE = Length.ofMm(100);

    /**
     * One arrangement.
     *
     * @param side null when there is no such joint
     * @param face null when there is no such joint
     * @param refusals why there is none, in sentences
     */
    record Side(
            String word,
            String name,
            String lead,
            @Nullable JointDrawing side,
            @Nullable JointDrawing face,
            List<String> refusals) {}

    /** One line of the table; a dash where an arrangement cannot be. */
    record Row(String letter, String label, String underlaid, String overlaid) {}

    record Fact(String name, String value) {}

    record SawLine(String saw, List<String> neck, List<String> head) {}

    static JointSheet of(JointInput input, List<Saw> saws, Formats fmt) {
        Made underlaid = Made.of(input.with(Arrangement.UNDERLAID));
        Made overlaid = Made.of(input.with(Arrangement.OVERLAID));
        return new JointSheet(
                List.of(underlaid.side(), overlaid.side()),
                rows(underlaid.joint(), overlaid.joint(), fmt),
                facts(input, fmt),
                saws.stream().map(saw -> sawLine(saw, input)).toList(),
                JointNotes.of(input));
    }

    /** The joint, or why it cannot be. */
    private record Made(Arrangement arrangement, @Nullable ScarfJoint joint, List<JointRefusal> refusals) {
        static Made of(JointInput input) {
            List<JointRefusal> refusals = ScarfJoint.refusals(input);
            return new Made(input.arrangement(), refusals.isEmpty() ? ScarfJoint.of(input) : null, refusals);
        }

        Side side() {
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
                    joint == null ? null : JointDrawing.side(joint, LengthUnit.MM),
                    joint == null ? null : JointDrawing.face(joint, LengthUnit.MM),
                    refusals.stream()
                            .map(r -> JointForm.label(r.field()) + " " + r.reason() + ".")
                            .toList());
        }
    }

    private interface Figure {
        String of(ScarfJoint joint);
    }

    private static List<Row> rows(@Nullable ScarfJoint underlaid, @Nullable ScarfJoint overlaid, Formats fmt) {
        List<Row> rows = new ArrayList<>();
        add(rows, JointRow.NECK_FRONT, "Neck piece, front", underlaid, overlaid, j -> fmt.mm(j.neckFront()));
        add(rows, JointRow.NECK_BACK, "Neck piece, back", underlaid, overlaid, j -> fmt.mm(j.neckBack()));
        add(rows, JointRow.HEAD_FRONT, "Head piece, front", underlaid, overlaid, j -> fmt.mm(j.headFront()));
        add(rows, JointRow.HEAD_BACK, "Head piece, back", underlaid, overlaid, j -> fmt.mm(j.headBack()));
        add(rows, JointRow.GLUE_FACE, "Glue face", underlaid, overlaid, j -> fmt.mm(j.glueFace()));
        add(rows, null, "Glue area", underlaid, overlaid, j -> fmt.area(j.glueArea()));
        add(
                rows,
                JointRow.SEAM,
                "Seam on the head’s front, from the nut",
                underlaid,
                overlaid,
                j -> j.hasSeam() ? fmt.mm(j.seamFromNut()) : "no seam");
        add(
                rows,
                JointRow.BACK_END,
                "End of the joint on the back, from the nut; + toward the tip",
                underlaid,
                overlaid,
                j -> backEnd(j, fmt));
        add(
                rows,
                JointRow.WING,
                "Wings beside the neck wood",
                underlaid,
                overlaid,
                j -> j.wingWidth().isPositive() ? "two of " + fmt.mm(j.wingWidth()) : "none");
        add(
                rows,
                null,
                "Gap at one end if the bevels differ by half a degree",
                underlaid,
                overlaid,
                j -> decimal(Bevel.gap(j.glueFace(), HALF_A_DEGREE).mm(), 2) + " mm");
        add(
                rows,
                null,
                "Both parts from one blank as thick as the thicker part",
                underlaid,
                overlaid,
                j -> fmt.mm(
                        j.onePieceLength(j.input().neckThickness().max(j.input().headThickness()), Length.ZERO)));
        return List.copyOf(rows);
    }

    private static void add(
            List<Row> rows,
            @Nullable JointRow row,
            String label,
            @Nullable ScarfJoint underlaid,
            @Nullable ScarfJoint overlaid,
            Figure figure) {
        rows.add(new Row(
                row == null ? "" : row.letter(),
                label,
                underlaid == null ? "–" : figure.of(underlaid),
                overlaid == null ? "–" : figure.of(overlaid)));
    }

    private static String backEnd(ScarfJoint joint, Formats fmt) {
        Length end = joint.backEndFromNut();
        return (end.isPositive() ? "+" : "") + fmt.mm(end);
    }

    private static List<Fact> facts(JointInput input, Formats fmt) {
        Angle angle = input.angle();
        double slope = angle.cot();
        double[] kept = GrainSlope.bendingKept(slope);
        String extrapolated =
                GrainSlope.isExtrapolated(slope) ? ", beyond the printed rows and so an extrapolation" : "";
        return List.of(
                new Fact("Slope of the scarf", "1 : " + decimal(slope, 2)),
                new Fact(
                        "Glue area over the section it joins",
                        decimal(1 / angle.sin(), 2) + ". The Wood Handbook’s benchmark for a scarf is at least 10, and "
                                + "1 in 12 or flatter is strongest; a tilted head is steeper than that."),
                new Fact(
                        "If the head were sawn from one straight piece instead",
                        "its grain would run out at 1 in " + decimal(slope, 2) + ", and about " + decimal(kept[0], 0)
                                + " to " + decimal(kept[1], 0)
                                + " % of the bending strength would be left (Hankinson’s formula, fitted to Wood Handbook "
                                + "Table 5-12" + extrapolated + "). A scarf leaves both parts straight-grained "
                                + "everywhere but on one plane."),
                new Fact(
                        "Jig wedge",
                        fmt.mm(new JigWedge(angle, WEDGE_BASE).rise()) + " of rise for every 100 mm of length"),
                new Fact(
                        "Thinning the head piece after its bevel is cut",
                        "From its back the front keeps its length C. From its front, the front grows by "
                                + decimal(slope, 2) + " mm for every millimetre taken off."));
    }

    private static SawLine sawLine(Saw saw, JointInput input) {
        SawLimits limits = new SawLimits(saw.depth(), saw.reach(), saw.shallowest(), saw.steepest());
        return new SawLine(
                saw.name(),
                new SawNeed(input.angle(), input.neckThickness(), input.neckWidth()).refusals(limits),
                new SawNeed(input.angle(), input.headThickness(), input.headWidth()).refusals(limits));
    }

    private static String decimal(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    }
}
