package org.scarfwright.joint;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.measure.Length;

/**
 * What must be sawn so that a neck ends as wanted when its head piece comes from thicker stock and is thinned in a given order.
 *
 * <p>With s the stock, f the head's last thickness and r = s − f what comes off:
 *
 * <ul>
 *   <li>taking r off the <b>front</b> after the bevel makes the front longer by r·cot a, because a bevel reaches furthest at the
 *       back; so that much less is sawn;
 *   <li>taking it off the front of the glued neck also moves the nut toward the heel by r / sin a, so an underlaid neck piece is
 *       sawn that much longer; overlaid, the head piece was thicker when it was glued, and the two cancel;
 *   <li>taking it off the <b>back</b> changes no front. Underlaid it takes glue face with it, before gluing or after. Overlaid
 *       before gluing it brings the neck's bevel forward; after gluing the bevel lies s deep, so the neck piece is r / sin a
 *       shorter and keeps its whole glue face.
 * </ul>
 *
 * <p>A method ending in Mm is the bare formula; the others are for cutting, rounded up.
 *
 * <p><b>Source:</b> derived here; the tests saw, thin and glue polygons in each order and measure what comes out.
 *
 * @param wanted the neck as it ends: its head thickness is f
 * @param stock s, thickness of the head piece as it comes
 */
public record OrderedHead(JointInput wanted, Length stock, HeadOrder order) {

    /** @throws ImpossibleJointException with every reason why it cannot be made so */
    public OrderedHead {
        List<JointRefusal> refusals = refusals(wanted, stock, order);
        if (!refusals.isEmpty()) {
            throw new ImpossibleJointException(refusals);
        }
    }

    /** Every reason why a neck cannot be made in this order; empty when it can. */
    public static List<JointRefusal> refusals(JointInput wanted, Length stock, HeadOrder order) {
        List<JointRefusal> found = new ArrayList<>(ScarfJoint.refusals(wanted));
        if (!found.isEmpty()) {
            return List.copyOf(found);
        }
        Length finished = wanted.headThickness();
        if (stock.isShorterThan(finished)) {
            return List.of(new JointRefusal(
                    "headStock",
                    Words.plain(stock),
                    "is " + Words.plain(stock) + ", thinner than the head, " + Words.plain(finished)
                            + "; it must be at least as thick"));
        }
        double front = ScarfJoint.of(wanted).headFrontMm();
        double removed = stock.minus(finished).mm();
        if (order.fromFront() && front - removed * wanted.angle().cot() <= 0) {
            found.add(new JointRefusal(
                    "headStock",
                    Words.plain(stock),
                    "is " + Words.plain(stock) + ", but with " + Words.mm(removed)
                            + " to come off the front after the bevel, the bevel would run off the tip; plane it to less than "
                            + Words.mmAtMost(
                                    finished.mm() + front * wanted.angle().tan())
                            + " before the bevel is cut, or thin it from the back"));
        }
        if (order == HeadOrder.BACK_AFTER_GLUING) {
            found.addAll(ScarfJoint.refusals(wanted.withHeadThickness(stock)));
        }
        return List.copyOf(found);
    }

    private boolean underlaid() {
        return wanted.arrangement() == Arrangement.UNDERLAID;
    }

    private double sin() {
        return wanted.angle().sin();
    }

    private double cot() {
        return wanted.angle().cot();
    }

    /** r, what comes off the stock. */
    public Length removed() {
        return stock.minus(wanted.headThickness());
    }

    /** Thickness of the head piece when its bevel is cut. */
    public Length sawnThickness() {
        return order == HeadOrder.PLANED_FIRST ? wanted.headThickness() : stock;
    }

    /** Thickness of the head piece when it is glued. */
    public Length gluedThickness() {
        return order.afterGluing() ? stock : wanted.headThickness();
    }

    /** Front of the head piece as sawn, its short side. */
    public double headShortMm() {
        double front = ScarfJoint.of(wanted).headFrontMm();
        return order.fromFront() ? front - removed().mm() * cot() : front;
    }

    /** Back of the head piece as sawn, its long side. */
    public double headLongMm() {
        return headShortMm() + sawnThickness().mm() * cot();
    }

    /** Top of the neck piece as sawn, its short side. */
    public double neckShortMm() {
        double front = ScarfJoint.of(wanted).neckFrontMm();
        double moved = removed().mm() / sin();
        if (underlaid()) {
            return order == HeadOrder.FRONT_AFTER_GLUING ? front + moved : front;
        }
        return order == HeadOrder.BACK_AFTER_GLUING ? front - moved : front;
    }

    /** Back of the neck piece as sawn, its long side. */
    public double neckLongMm() {
        return neckShortMm() + wanted.neckThickness().mm() * cot();
    }

    /** Glue face when it is glued: what the clamps must press. */
    public double gluedFaceMm() {
        return (underlaid() ? gluedThickness() : wanted.neckThickness()).mm() / sin();
    }

    /** Glue face that is left when the head has its last thickness. */
    public double finishedFaceMm() {
        return (underlaid() ? wanted.headThickness() : wanted.neckThickness()).mm() / sin();
    }

    /** Where the joint ends on the back of the finished neck, from the nut, above 0 toward the tip. */
    public double backEndFromNutMm() {
        Length depth = !underlaid() && order == HeadOrder.BACK_AFTER_GLUING ? stock : wanted.headThickness();
        return wanted.neckThickness().mm() * cot() - depth.mm() / sin();
    }

    public Length headShort() {
        return Length.upFromMm(headShortMm());
    }

    public Length headLong() {
        return Length.upFromMm(headLongMm());
    }

    public Length neckShort() {
        return Length.upFromMm(neckShortMm());
    }

    public Length neckLong() {
        return Length.upFromMm(neckLongMm());
    }

    /** To the nearest micrometre. */
    public Length gluedFace() {
        return Length.nearestMm(gluedFaceMm());
    }

    /** To the nearest micrometre. */
    public Length finishedFace() {
        return Length.nearestMm(finishedFaceMm());
    }

    /** To the nearest micrometre. */
    public Length backEndFromNut() {
        return Length.nearestMm(backEndFromNutMm());
    }
}
