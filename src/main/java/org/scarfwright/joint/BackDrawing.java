package org.scarfwright.joint;

import java.util.List;
import org.scarfwright.measure.LengthUnit;

/**
 * The back from behind, laid flat: the neck's back up to where the joint ends, and the head's back from there to the tip. The two
 * planes meet exactly there, so nothing is foreshortened.
 */
final class BackDrawing {
    private static final double LEAST_DRAWN = 0.05;

    private final ScarfJoint joint;
    private final double neckWidth;
    private final double headWidth;
    private final double end;
    private final double tip;
    private final double left;
    private final Pen pen;

    BackDrawing(ScarfJoint joint, LengthUnit unit) {
        this.joint = joint;
        JointInput in = joint.input();
        neckWidth = in.neckWidth().mm();
        headWidth = in.headWidth().mm();
        end = joint.backEndFromNutMm();
        tip = end + joint.backOfHeadMm();
        left = Math.max(-in.neckLength().mm(), Math.min(0, end) - Math.max(45, 0.25 * joint.backOfHeadMm()));
        pen = new Pen(tip - left, unit);
    }

    JointDrawing drawing() {
        List<Point> neck = Pen.block(left, end, neckWidth);
        List<Point> head = Pen.block(end, tip, headWidth);
        pen.area("d-neck", neck);
        pen.grain("d-grain", neck, Point.TO_TIP, Pen.GRAIN);
        pen.area("d-head", head);
        pen.grain("d-grain d-grain-broken", head, Point.TO_TIP, Pen.GRAIN);
        wings();
        double across = Math.min(neckWidth, headWidth) / 2;
        pen.line("d-glue", new Point(end, -across), new Point(end, across));
        double edge = Math.max(neckWidth, headWidth) / 2;
        double past = edge + 0.8 * pen.font();
        pen.line("d-axis", new Point(0, -past), new Point(0, past));
        pen.label(new Pen.Text(null, null, "below the nut"), new Point(0, past + 0.2 * pen.font()), "end", 0);
        if (Math.abs(end) >= LEAST_DRAWN) {
            pen.dimension(
                    new Point(Math.min(0, end), edge),
                    new Point(Math.max(0, end), edge),
                    Point.UP,
                    pen.row(),
                    false,
                    pen.row(JointRow.BACK_END, end));
        }
        pen.dimension(
                new Point(end, -edge),
                new Point(tip, -edge),
                Point.DOWN,
                pen.row(),
                false,
                pen.row(JointRow.BACK_OF_HEAD, joint.backOfHeadMm()));
        width(left, neckWidth, Point.TO_HEEL, "w");
        width(tip, headWidth, Point.TO_TIP, "W");
        return pen.drawing(title(), description());
    }

    /** Underlaid, the wings show between the nut and the end of the joint. */
    private void wings() {
        if (joint.wingWidthMm() <= 0 || end <= 0) {
            return;
        }
        for (double side : new double[] {1, -1}) {
            List<Point> outline = List.of(
                    new Point(0, side * neckWidth / 2),
                    new Point(end, side * neckWidth / 2),
                    new Point(end, side * headWidth / 2),
                    new Point(0, side * headWidth / 2));
            pen.area("d-wing", outline);
            pen.grain("d-grain", outline, new Point(Math.sqrt(0.5), Math.sqrt(0.5)), Pen.GRAIN);
        }
    }

    private void width(double at, double width, Point outward, String letter) {
        pen.dimension(
                new Point(at, -width / 2),
                new Point(at, width / 2),
                outward,
                1.6 * pen.font(),
                false,
                new Pen.Text(letter, null, pen.bare(width)));
    }

    private String title() {
        return "Back of neck and head, " + joint.input().arrangement().word();
    }

    private String description() {
        return "Neck and head from behind, laid flat. Neck wood " + pen.said(neckWidth) + " wide ends "
                + pen.said(Math.abs(end)) + " from the nut toward the " + (end >= 0 ? "tip" : "heel") + "; head wood "
                + pen.said(headWidth) + " wide runs from there " + pen.said(joint.backOfHeadMm()) + " to the tip.";
    }
}
