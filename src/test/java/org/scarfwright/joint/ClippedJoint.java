package org.scarfwright.joint;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A joint built without any of its formulae: the fingerboard plane, the neck's back and the head's front and back are laid as
 * large blocks, the head's turned by the tilt angle about the nut, and the pieces are what is left where the blocks overlap. All
 * lengths are measured on the edges of the pieces.
 *
 * <p>Geometry by the JTS Topology Suite.
 */
final class ClippedJoint {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double FAR = 50_000;
    private static final double ON_LINE = 1e-6;

    final Geometry neck;
    final Geometry head;

    private final double t;
    private final double h;
    private final boolean underlaid;
    private final AffineTransformation toHead;

    ClippedJoint(JointInput in) {
        t = in.neckThickness().mm();
        h = in.headThickness().mm();
        underlaid = in.arrangement() == Arrangement.UNDERLAID;
        double radians = in.angle().toDegrees().doubleValue() * Math.PI / 180;
        AffineTransformation tilt =
                AffineTransformation.rotationInstance(-radians).translate(0, t);
        toHead = AffineTransformation.translationInstance(0, -t).rotate(radians);

        Geometry strip = block(-in.neckLength().mm(), FAR, 0, t);
        Geometry slab = tilt.transform(block(-FAR, in.headLength().mm(), -h, 0));
        if (underlaid) {
            neck = strip.intersection(tilt.transform(block(-FAR, FAR, -FAR, 0)));
            head = slab.intersection(block(-FAR, FAR, -FAR, 0));
        } else {
            neck = strip.intersection(tilt.transform(block(-FAR, FAR, -FAR, -h)));
            head = slab.intersection(block(-FAR, FAR, -FAR, t));
        }
    }

    private static Geometry block(double left, double right, double low, double high) {
        return FACTORY.toGeometry(new Envelope(left, right, low, high));
    }

    /** Neck piece along the fingerboard plane; 0 when nothing of it is left. */
    double neckFront() {
        return length(edge(neck, t));
    }

    double neckBack() {
        return length(edge(neck, 0));
    }

    double headFront() {
        return length(edge(headLaidFlat(), 0));
    }

    double headBack() {
        return length(edge(headLaidFlat(), -h));
    }

    /** Where the two pieces touch. */
    double glueFace() {
        double[] onNeck = glued(neck);
        double[] onHead = glued(head);
        return Math.max(0, Math.min(onNeck[1], onHead[1]) - Math.max(onNeck[0], onHead[0]));
    }

    /** The bevel that has to be covered by the other piece. */
    double bevelToCover() {
        return length(glued(underlaid ? head : neck));
    }

    double seamFromNut() {
        return edge(headLaidFlat(), 0)[0];
    }

    double backEnd() {
        return underlaid ? edge(head, 0)[0] : edge(neck, 0)[1];
    }

    /** Head wood that shows on the back, from where the joint ends to the tip. */
    double backOfHead() {
        double tip = edge(headLaidFlat(), -h)[1];
        if (underlaid) {
            return tip - edge(headLaidFlat(), -h)[0];
        }
        double end = edge(toHead.transform(neck), -h)[1];
        return tip - end;
    }

    /** Bevel that is level with what is in front: the neck's with the head's front, or the head's with the neck's top. */
    double bevelInFront() {
        return length(underlaid ? edge(toHead.transform(neck), 0) : edge(head, t));
    }

    /** Glue face over the thickness of the part whose bevel it is. */
    double glueFaceOverSection() {
        return glueFace() / (underlaid ? h : t);
    }

    /** How far the neck's bevel reaches along it, over its thickness. */
    double runOverThickness() {
        return (neckBack() - neckFront()) / t;
    }

    /** The blank that both parts were cut from with one shared cut: the head is turned over and laid against the neck. */
    Geometry laidBackIntoOneBlank() {
        Geometry flat = AffineTransformation.reflectionInstance(1, 0).transform(headLaidFlat());
        double start = edge(flat, h)[0];
        return neck.union(AffineTransformation.translationInstance(-start + edge(neck, t)[1], 0)
                .transform(flat));
    }

    /** Side view of the head with its front face on y = 0 and the nut at x = 0. */
    private Geometry headLaidFlat() {
        return toHead.transform(head);
    }

    private double[] glued(Geometry piece) {
        return underlaid ? edge(piece, 0) : edge(toHead.transform(piece), -h);
    }

    private static double length(double[] edge) {
        return Math.max(0, edge[1] - edge[0]);
    }

    /** From where to where an outline lies on a level line; from 0 to 0 when it does not. */
    private static double[] edge(Geometry piece, double level) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (Coordinate c : piece.getCoordinates()) {
            if (Math.abs(c.y - level) < ON_LINE) {
                from = Math.min(from, c.x);
                to = Math.max(to, c.x);
            }
        }
        return from <= to ? new double[] {from, to} : new double[] {0, 0};
    }
}
