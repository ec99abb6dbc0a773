package org.scarfwright.joint;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;

/** The joint from the side. The neck is broken off toward the heel, so that the joint itself is large. */
final class SideDrawing {
    private final ScarfJoint joint;
    private final JointInput in;
    private final double t;
    private final double h;
    private final Point nut;
    private final Point along;
    private final Point outOfFace;
    private final SideView whole;
    private final double left;
    private final boolean broken;
    private final Pen pen;

    SideDrawing(ScarfJoint joint, LengthUnit unit) {
        this.joint = joint;
        in = joint.input();
        t = in.neckThickness().mm();
        h = in.headThickness().mm();
        nut = new Point(0, t);
        along = SideView.along(in);
        outOfFace = new Point(-along.y(), along.x());
        whole = SideView.of(joint);
        double reach =
                Math.max(Math.max(-joint.backEndFromNutMm(), h / in.angle().sin()), 0);
        double stub = Math.max(60, 0.25 * (in.headLength().mm() + reach));
        broken = reach + stub < in.neckLength().mm();
        left = broken ? -reach - stub : -in.neckLength().mm();
        pen = new Pen(in.headLength().mm() - left, unit);
    }

    JointDrawing drawing() {
        List<Point> neck =
                List.of(new Point(left, t), whole.neck().get(1), whole.neck().get(2), new Point(left, 0));
        pen.area("d-neck", neck);
        pen.grain("d-grain", neck, new Point(1, 0), Pen.GRAIN);
        pen.area("d-head", whole.head());
        pen.grain("d-grain d-grain-broken", whole.head(), along, Pen.GRAIN);
        pen.line("d-glue", whole.glueStart(), whole.glueEnd());
        if (broken) {
            breakOff();
        }
        nutMark();
        frontDimensions();
        backDimensions();
        thicknesses();
        angle();
        return pen.drawing(title(), description());
    }

    private void breakOff() {
        double wave = Math.min(2.5, t / 6);
        pen.area(
                "d-paper",
                List.of(
                        new Point(left - 1, t + 1),
                        new Point(left, t + 1),
                        new Point(left + wave, t * 0.55),
                        new Point(left - wave, t * 0.45),
                        new Point(left, -1),
                        new Point(left - wave - 1, -1)));
        pen.line(
                "d-thin",
                new Point(left, t + 2),
                new Point(left + wave, t * 0.55),
                new Point(left - wave, t * 0.45),
                new Point(left, -2));
    }

    private void nutMark() {
        double width = 0.5 * pen.font();
        pen.area(
                "d-ink",
                List.of(new Point(-width, t), new Point(-width, t + pen.font()), new Point(0, t + pen.font()), nut));
        pen.label(new Pen.Text(null, null, "nut"), new Point(-1.5 * width, t + 0.35 * pen.font()), "end", 0);
    }

    private void frontDimensions() {
        double row = pen.row();
        Point end = new Point(left, t);
        Point tip = whole.head().get(1);
        pen.dimension(
                end, whole.neck().get(1), Point.UP, row, broken, pen.row(JointRow.NECK_FRONT, joint.neckFrontMm()));
        if (joint.hasSeam()) {
            Point seam = whole.head().get(0);
            pen.dimension(nut, seam, outOfFace, row, false, pen.row(JointRow.SEAM, joint.seamFromNutMm()));
            pen.dimension(seam, tip, outOfFace, row, false, pen.row(JointRow.HEAD_FRONT, joint.headFrontMm()));
            pen.dimension(
                    nut,
                    tip,
                    outOfFace,
                    2 * row,
                    false,
                    plain("H", in.headLength().mm()));
        } else {
            pen.dimension(
                    end,
                    nut,
                    Point.UP,
                    2 * row,
                    broken,
                    plain("N", in.neckLength().mm()));
            pen.dimension(nut, tip, outOfFace, row, false, pen.row(JointRow.HEAD_FRONT, joint.headFrontMm()));
        }
    }

    private void backDimensions() {
        double row = pen.row();
        Point outOfBack = outOfFace.times(-1);
        Point tipBack = whole.head().get(2);
        Point start = whole.head().get(3);
        Point backEnd = new Point(joint.backEndFromNutMm(), 0);
        if (joint.hasSeam()) {
            double below = (h + row) / along.x() + row;
            pen.dimension(start, tipBack, outOfBack, row, false, pen.row(JointRow.HEAD_BACK, joint.headBackMm()));
            backEndDimension(backEnd, below);
            glueDimension(Point.DOWN, below + row);
            neckBackDimension(below + 2 * row);
        } else {
            double below = Math.max(0, h / along.x() - t) + row;
            double clear = (t + below + 2 * row) / along.x();
            backEndDimension(backEnd, below);
            neckBackDimension(below + row);
            glueDimension(outOfBack, clear);
            pen.dimension(
                    start, tipBack, outOfBack, clear + row, false, pen.row(JointRow.HEAD_BACK, joint.headBackMm()));
        }
    }

    private void backEndDimension(Point backEnd, double below) {
        if (Math.abs(backEnd.x()) < 0.05) {
            return;
        }
        Point zero = new Point(0, 0);
        boolean ahead = backEnd.x() > 0;
        pen.dimension(
                ahead ? zero : backEnd,
                ahead ? backEnd : zero,
                Point.DOWN,
                below,
                false,
                pen.row(JointRow.BACK_END, joint.backEndFromNutMm()));
    }

    private void glueDimension(Point outward, double offset) {
        pen.dimension(
                whole.glueStart(),
                whole.glueEnd(),
                outward,
                offset,
                false,
                pen.row(JointRow.GLUE_FACE, joint.glueFaceMm()));
    }

    private void neckBackDimension(double below) {
        pen.dimension(
                new Point(left, 0),
                whole.neck().get(2),
                Point.DOWN,
                below,
                broken,
                pen.row(JointRow.NECK_BACK, joint.neckBackMm()));
    }

    private void thicknesses() {
        pen.dimension(new Point(left, 0), new Point(left, t), Point.TO_HEEL, 1.6 * pen.font(), false, plain("t", t));
        pen.dimension(whole.head().get(2), whole.head().get(1), along, 1.6 * pen.font(), false, plain("h", h));
    }

    private void angle() {
        double radius = in.headLength().mm() + 3.4 * pen.font();
        Point level = new Point(radius + pen.font(), t);
        pen.line("d-axis", nut, level);
        int steps = 12;
        Point[] arc = new Point[steps + 1];
        for (int i = 0; i <= steps; i++) {
            double turn = -in.angle().radians() * i / steps;
            arc[i] = nut.plus(new Point(radius * Math.cos(turn), radius * Math.sin(turn)));
        }
        pen.line("d-dim", arc);
        Point middle = arc[steps / 2];
        pen.label(
                new Pen.Text(null, null, in.angle().toString()),
                middle.plus(new Point(0.6 * pen.font(), -0.4 * pen.font())),
                "start",
                0);
    }

    private Pen.Text plain(@Nullable String letter, double mm) {
        return new Pen.Text(letter, null, pen.bare(mm));
    }

    private String title() {
        return (joint.hasSeam() ? "Underlaid" : "Overlaid") + " scarf joint at " + in.angle() + ", from the side";
    }

    private String description() {
        return "Neck piece " + pen.said(t) + " thick, " + pen.said(joint.neckFrontMm()) + " along its front and "
                + pen.said(joint.neckBackMm()) + " along its back. Head piece " + pen.said(h) + " thick, "
                + pen.said(joint.headFrontMm()) + " along its front and " + pen.said(joint.headBackMm())
                + " along its back. Glue face " + pen.said(joint.glueFaceMm()) + " long. "
                + (joint.hasSeam()
                        ? "The seam crosses the head’s front face " + pen.said(joint.seamFromNutMm())
                                + " from the nut. "
                        : "No seam on the head’s front face. ")
                + "On the back the joint ends " + pen.said(Math.abs(joint.backEndFromNutMm()))
                + (joint.backEndFromNutMm() >= 0 ? " from the nut toward the tip." : " from the nut toward the heel.")
                + (broken ? " The neck is broken off toward the heel." : "");
    }
}
