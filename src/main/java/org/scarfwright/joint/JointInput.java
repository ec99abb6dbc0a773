package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What a scarf joint is computed from. Nothing is checked here, so that everything that is wrong can be told at once; see
 * {@link ScarfJoint#refusals(JointInput)}.
 *
 * @param angle tilt of the head against the neck, and the bevel on both pieces
 * @param neckThickness t, of the neck piece where the bevel is cut
 * @param headThickness h, of the head piece when it is glued
 * @param neckLength N, along the top from the heel end to the nut
 * @param headLength H, along the front face from the nut to the tip
 * @param neckWidth w, of the neck piece
 * @param headWidth W, of the head at its widest
 */
public record JointInput(
        Arrangement arrangement,
        Angle angle,
        Length neckThickness,
        Length headThickness,
        Length neckLength,
        Length headLength,
        Length neckWidth,
        Length headWidth) {

    /** The same neck the other way round. */
    public JointInput with(Arrangement other) {
        return new JointInput(other, angle, neckThickness, headThickness, neckLength, headLength, neckWidth, headWidth);
    }

    /** The same neck at another angle. */
    public JointInput with(Angle other) {
        return new JointInput(
                arrangement, other, neckThickness, headThickness, neckLength, headLength, neckWidth, headWidth);
    }

    /** The same neck with a head piece of another thickness. */
    public JointInput withHeadThickness(Length other) {
        return new JointInput(arrangement, angle, neckThickness, other, neckLength, headLength, neckWidth, headWidth);
    }

    /** The same neck with a neck piece of another thickness. */
    public JointInput withNeckThickness(Length other) {
        return new JointInput(arrangement, angle, other, headThickness, neckLength, headLength, neckWidth, headWidth);
    }
}
