package org.scarfwright.joint;

import java.util.List;

/**
 * The two parts of an assembled joint seen from the side, as polygons; heel end and tip are square to their fronts.
 *
 * <p><b>Source:</b> derived here; axes on the package's page.
 *
 * @param neck heel at the top, end of the top, end of the back, heel at the back
 * @param head start of the front, tip at the front, tip at the back, start of the back
 * @param glueStart end of the glue face nearer to the heel
 * @param glueEnd end of the glue face nearer to the tip
 */
public record SideView(List<Point> neck, List<Point> head, Point glueStart, Point glueEnd) {
    public SideView {
        neck = List.copyOf(neck);
        head = List.copyOf(head);
    }

    public static SideView of(ScarfJoint joint) {
        JointInput in = joint.input();
        double t = in.neckThickness().mm();
        double h = in.headThickness().mm();
        double sin = in.angle().sin();
        double cot = in.angle().cot();
        double heel = -in.neckLength().mm();
        Point nut = new Point(0, t);
        Point fall = along(in);
        Point under = new Point(-fall.y(), fall.x()).times(-h);
        Point tip = nut.plus(fall.times(in.headLength().mm()));
        Point backEnd = new Point(t * cot - h / sin, 0);
        boolean underlaid = in.arrangement() == Arrangement.UNDERLAID;
        Point seam = new Point(t * cot, 0);
        Point behindNut = new Point(-h / sin, t);
        List<Point> neck = List.of(
                new Point(heel, t), underlaid ? nut : behindNut, underlaid ? seam : backEnd, new Point(heel, 0));
        List<Point> head = List.of(underlaid ? seam : nut, tip, tip.plus(under), underlaid ? backEnd : behindNut);
        return underlaid ? new SideView(neck, head, backEnd, seam) : new SideView(neck, head, behindNut, backEnd);
    }

    /** Unit vector down the head's front face, from the nut to the tip. */
    static Point along(JointInput in) {
        return new Point(Math.cos(in.angle().radians()), -in.angle().sin());
    }
}
