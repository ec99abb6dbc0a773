package org.scarfwright.joint;

import org.scarfwright.measure.Length;

/**
 * What a volute asks of wood: the swelling behind the nut that stands out from the neck's back.
 *
 * <p><b>Source:</b> derived here. That it may come from the neck's stock, from the head's or from a block is common practice.
 *
 * @param height v, how far it stands out from the neck's back; above zero
 */
public record VoluteNeed(Length height) {
    /**
     * The joint when the volute is left standing on a thicker neck piece: its bevel runs through t + v, so the seam lies
     * v / sin a further from the nut.
     */
    public JointInput fromTheNeck(JointInput joint) {
        return joint.withNeckThickness(joint.neckThickness().plus(height));
    }

    /** Head stock out of which the volute can be left when the head's back is thinned after gluing: f + v. */
    public Length headStock(JointInput joint) {
        return joint.headThickness().plus(height);
    }
}
