package org.scarfwright.joint;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A neck made as a shop makes it, from the sizes an {@link OrderedHead} says to saw: both pieces are sawn as trapeziums, the head is
 * thinned, laid against the neck, and thinned again, each by cutting polygons. Everything is then measured on what is left.
 *
 * <p>Geometry by the JTS Topology Suite; no formula of the joint.
 */
final class MadeNeck {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double FAR = 20_000;
    private static final double ON_LINE = 1e-5;

    private final double t;
    private final Geometry neck;
    private final Geometry head;
    private final double gluedFace;
    private final double finishedFace;

    /** Turns the made neck so that the head's front lies level at 0 and its nut end at the lower x. */
    private final AffineTransformation flat;

    private final boolean underlaid;

    MadeNeck(OrderedHead sawn) {
        JointInput wanted = sawn.wanted();
        t = wanted.neckThickness().mm();
        double f = wanted.headThickness().mm();
        double s = sawn.stock().mm();
        double removed = s - f;
        double radians = wanted.angle().toDegrees().doubleValue() * Math.PI / 180;
        underlaid = wanted.arrangement() == Arrangement.UNDERLAID;
        HeadOrder order = sawn.order();

        double top = sawn.neckShortMm();
        double back = sawn.neckLongMm();
        Geometry neckPiece = polygon(0, t, top, t, back, 0, 0, 0);

        double thick = sawn.sawnThickness().mm();
        double front = sawn.headShortMm();
        double reach = sawn.headLongMm() - front;
        Geometry piece = polygon(0, 0, front, 0, front, -thick, -reach, -thick);
        double glued = thick;
        if (order == HeadOrder.BACK_BEFORE_GLUING) {
            piece = piece.intersection(box(-FAR, FAR, -f, FAR));
            glued = f;
        } else if (order == HeadOrder.FRONT_BEFORE_GLUING) {
            piece = AffineTransformation.translationInstance(0, removed)
                    .transform(piece.intersection(box(-FAR, FAR, -FAR, -removed)));
            glued = f;
        }
        Coordinate on = underlaid ? corner(piece, 0) : corner(piece, -glued);
        Coordinate at = underlaid ? new Coordinate(back, 0) : new Coordinate(top, t);
        AffineTransformation lay = AffineTransformation.translationInstance(-on.x, -on.y)
                .rotate(-radians)
                .translate(at.x, at.y);
        AffineTransformation toPiece = AffineTransformation.translationInstance(-at.x, -at.y)
                .rotate(radians)
                .translate(on.x, on.y);
        Geometry laid = lay.transform(piece);
        gluedFace = contact(neckPiece, laid, toPiece, glued);
        if (order == HeadOrder.FRONT_AFTER_GLUING) {
            Geometry keep = lay.transform(box(-FAR, FAR, -FAR, -removed));
            neck = neckPiece.intersection(keep);
            head = laid.intersection(keep);
            flat = AffineTransformation.translationInstance(-at.x, -at.y)
                    .rotate(radians)
                    .translate(on.x, on.y + removed);
        } else if (order == HeadOrder.BACK_AFTER_GLUING) {
            Geometry thin = laid.intersection(lay.transform(box(-FAR, FAR, -f, FAR)));
            // What lies within the neck's thickness is no part of the head's back and stays.
            head = underlaid ? thin : thin.union(laid.intersection(box(-FAR, FAR, 0, FAR)));
            neck = neckPiece;
            flat = toPiece;
        } else {
            head = laid;
            neck = neckPiece;
            flat = toPiece;
        }
        finishedFace = contact(neck, head, flat, underlaid ? 0 : depthOfBevel(order, s, f));
    }

    private static double depthOfBevel(HeadOrder order, double s, double f) {
        return order == HeadOrder.BACK_AFTER_GLUING ? s : f;
    }

    /** Where the fingerboard plane meets the head's front. */
    double nut() {
        return Math.max(edge(neck, t)[1], edge(head, t)[1]);
    }

    /** Heel end to nut. */
    double neckLength() {
        return nut();
    }

    /** Nut to tip along the front. */
    double headLength() {
        Coordinate start = flat.transform(new Coordinate(nut(), t), new Coordinate());
        return edge(flat.transform(head), 0)[1] - start.x;
    }

    /** How far the nut lies above or below the plane of the head's front; 0 when bevel and head are one plane. */
    double nutOffTheFront() {
        return flat.transform(new Coordinate(nut(), t), new Coordinate()).y;
    }

    /** Head wood on the front, from its first point to the tip. */
    double headFront() {
        double[] front = edge(flat.transform(head), 0);
        return front[1] - front[0];
    }

    double headThicknessAtTip() {
        Envelope box = flat.transform(head).getEnvelopeInternal();
        Geometry tip = flat.transform(head).intersection(box(box.getMaxX() - 0.01, FAR, -FAR, FAR));
        return tip.getEnvelopeInternal().getHeight();
    }

    double gluedFace() {
        return gluedFace;
    }

    double finishedFace() {
        return finishedFace;
    }

    /** Where the joint ends on the back, from the nut, above 0 toward the tip. */
    double backEnd() {
        return (underlaid ? edge(head, 0)[0] : edge(neck, 0)[1]) - nut();
    }

    Geometry neckWood() {
        return neck;
    }

    Geometry headWood() {
        return head;
    }

    /** Length over which both pieces lie on the glue plane. */
    private double contact(Geometry neckPiece, Geometry headPiece, AffineTransformation toHead, double depth) {
        double[] onNeck = underlaid ? edge(neckPiece, 0) : edge(toHead.transform(neckPiece), -depth);
        double[] onHead = underlaid ? edge(headPiece, 0) : edge(toHead.transform(headPiece), -depth);
        return Math.max(0, Math.min(onNeck[1], onHead[1]) - Math.max(onNeck[0], onHead[0]));
    }

    /** The end of a piece's edge at this level that lies nearest to the heel. */
    private static Coordinate corner(Geometry piece, double level) {
        @Nullable Coordinate found = null;
        for (Coordinate c : piece.getCoordinates()) {
            if (Math.abs(c.y - level) < ON_LINE && (found == null || c.x < found.x)) {
                found = c;
            }
        }
        return Objects.requireNonNull(found);
    }

    private static double[] edge(Geometry piece, double level) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (Coordinate c : piece.getCoordinates()) {
            if (Math.abs(c.y - level) < ON_LINE) {
                from = Math.min(from, c.x);
                to = Math.max(to, c.x);
            }
        }
        return new double[] {from, to};
    }

    private static Geometry box(double left, double right, double low, double high) {
        return FACTORY.toGeometry(new Envelope(left, right, low, high));
    }

    private static Geometry polygon(double... xy) {
        Coordinate[] ring = new Coordinate[xy.length / 2 + 1];
        for (int i = 0; i < ring.length; i++) {
            int at = i % (xy.length / 2);
            ring[i] = new Coordinate(xy[2 * at], xy[2 * at + 1]);
        }
        return FACTORY.createPolygon(ring);
    }
}
