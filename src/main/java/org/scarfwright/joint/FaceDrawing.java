package org.scarfwright.joint;

import java.util.List;
import org.scarfwright.measure.LengthUnit;

/** The head's front face from above, laid flat, with the nut across and the head as wide as its outline needs. */
final class FaceDrawing {
    private final ScarfJoint joint;
    private final double neckWidth;
    private final double headWidth;
    private final double headLength;
    private final double left;
    private final Pen pen;

    FaceDrawing(ScarfJoint joint, LengthUnit unit) {
        this.joint = joint;
        JointInput in = joint.input();
        neckWidth = in.neckWidth().mm();
        headWidth = in.headWidth().mm();
        headLength = in.headLength().mm();
        double covered =
                joint.hasSeam() ? 0 : in.headThickness().mm() / in.angle().sin();
        left = -Math.min(in.neckLength().mm(), covered + Math.max(45, 0.25 * headLength));
        pen = new Pen(headLength - left, unit);
    }

    JointDrawing drawing() {
        return joint.hasSeam() ? underlaid() : overlaid();
    }

    private JointDrawing underlaid() {
        double seam = joint.seamFromNutMm();
        List<Point> neck = Pen.block(left, seam, neckWidth);
        List<Point> head = Pen.block(seam, headLength, headWidth);
        pen.area("d-head", head);
        pen.grain("d-grain d-grain-broken", head, Point.TO_TIP, Pen.GRAIN);
        double wing = joint.wingWidthMm();
        if (wing > 0) {
            for (double side : new double[] {1, -1}) {
                List<Point> outline = List.of(
                        new Point(0, side * neckWidth / 2),
                        new Point(seam, side * neckWidth / 2),
                        new Point(seam, side * headWidth / 2),
                        new Point(0, side * headWidth / 2));
                pen.area("d-wing", outline);
                pen.grain("d-grain", outline, new Point(Math.sqrt(0.5), Math.sqrt(0.5)), Pen.GRAIN);
            }
        }
        pen.area("d-neck", neck);
        pen.grain("d-grain", neck, Point.TO_TIP, Pen.GRAIN);
        double across = Math.min(neckWidth, headWidth) / 2;
        pen.line("d-glue", new Point(seam, -across), new Point(seam, across));
        double edge = Math.max(neckWidth, headWidth) / 2;
        pen.dimension(
                new Point(0, edge), new Point(seam, edge), Point.UP, pen.row(), false, pen.row(JointRow.SEAM, seam));
        if (wing > 0) {
            pen.dimension(
                    new Point(0, neckWidth / 2),
                    new Point(0, headWidth / 2),
                    Point.TO_HEEL,
                    1.6 * pen.font(),
                    false,
                    pen.row(JointRow.WING, wing));
        }
        common();
        return pen.drawing(
                "Front of the head, underlaid",
                "The head’s front face from above. Neck wood " + pen.said(neckWidth)
                        + " wide runs from the nut to the seam, "
                        + pen.said(seam) + " from the nut; head wood " + pen.said(headWidth)
                        + " wide from there to the tip, "
                        + pen.said(headLength) + " from the nut. "
                        + (wing > 0
                                ? "Two wings, each " + pen.said(wing) + " wide, fill the outline beside the neck wood."
                                : "No wings are needed."));
    }

    private JointDrawing overlaid() {
        JointInput in = joint.input();
        double covered = in.headThickness().mm() / in.angle().sin();
        List<Point> neck = Pen.block(left, -covered, neckWidth);
        List<Point> head = Pen.block(-covered, headLength, headWidth);
        pen.area("d-neck", neck);
        pen.grain("d-grain", neck, Point.TO_TIP, Pen.GRAIN);
        pen.area("d-head", head);
        pen.grain("d-grain d-grain-broken", head, Point.TO_TIP, Pen.GRAIN);
        double across = Math.min(neckWidth, headWidth) / 2;
        pen.line("d-glue", new Point(-covered, -across), new Point(-covered, across));
        double edge = Math.max(neckWidth, headWidth) / 2;
        pen.dimension(
                new Point(-covered, edge),
                new Point(0, edge),
                Point.UP,
                pen.row(),
                false,
                new Pen.Text(null, "under the fingerboard", pen.bare(covered)));
        common();
        return pen.drawing(
                "Front of the head, overlaid",
                "The head’s front face from above. The head piece, " + pen.said(headWidth)
                        + " wide, reaches from " + pen.said(covered)
                        + " behind the nut, where the fingerboard covers its seam, to the tip, " + pen.said(headLength)
                        + " from the nut. No seam and no wings on the face.");
    }

    private void common() {
        double edge = Math.max(neckWidth, headWidth) / 2;
        double past = edge + 0.8 * pen.font();
        pen.line("d-axis", new Point(0, -past), new Point(0, past));
        pen.label(new Pen.Text(null, null, "nut"), new Point(0, past + 0.2 * pen.font()), "end", 0);
        pen.dimension(
                new Point(0, -edge),
                new Point(headLength, -edge),
                Point.DOWN,
                pen.row(),
                false,
                new Pen.Text("H", null, pen.bare(headLength)));
        pen.dimension(
                new Point(left, -neckWidth / 2),
                new Point(left, neckWidth / 2),
                Point.TO_HEEL,
                1.6 * pen.font(),
                false,
                new Pen.Text("w", null, pen.bare(neckWidth)));
        pen.dimension(
                new Point(headLength, -headWidth / 2),
                new Point(headLength, headWidth / 2),
                Point.TO_TIP,
                1.6 * pen.font(),
                false,
                new Pen.Text("W", null, pen.bare(headWidth)));
    }
}
