package org.scarfwright.necks;

import java.util.List;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;

/**
 * A neck as the shop makes it.
 *
 * @param code short, unique
 * @param neckLength along the top, heel end to nut
 * @param neckThickness of the neck piece where the bevel is cut
 * @param headLength outline along the front face, nut to tip
 * @param headWidth widest place of the head's outline
 * @param headThickness of the head piece when it is glued
 * @param angles tilt angles allowed, shallowest first; never empty
 * @param arrangements allowed; never empty
 * @param neckWoods species allowed for the neck; empty means any
 * @param headWoods species allowed for the head; empty means any
 * @param linesMeet lamination lines must meet at the joint
 * @param wingsAllowed the head may be widened by two wings where the neck's wood is narrower than its outline
 * @param endAllowance extra length on each part, beside the saw's truing allowance
 * @param sideAllowance extra width on each part, both sides together
 */
public record NeckDesign(
        long id,
        long version,
        String code,
        String name,
        TypedLength neckLength,
        TypedLength nutWidth,
        TypedLength heelWidth,
        TypedLength neckThickness,
        TypedLength headLength,
        TypedLength headWidth,
        TypedLength headThickness,
        List<Angle> angles,
        List<Arrangement> arrangements,
        FaceFinish finish,
        List<String> neckWoods,
        List<String> headWoods,
        MatchRule match,
        boolean linesMeet,
        boolean wingsAllowed,
        TypedLength endAllowance,
        TypedLength sideAllowance) {
    public NeckDesign {
        angles = List.copyOf(angles);
        arrangements = List.copyOf(arrangements);
        neckWoods = List.copyOf(neckWoods);
        headWoods = List.copyOf(headWoods);
    }

    /** The wider of nut and heel: what the neck piece must be. */
    public Length neckWidth() {
        return nutWidth.length().max(heelWidth.length());
    }

    /** What its joint is computed from, for one of the arrangements and one of the angles it allows. */
    public JointInput jointInput(Arrangement arrangement, Angle angle) {
        return new JointInput(
                arrangement,
                angle,
                neckThickness.length(),
                headThickness.length(),
                neckLength.length(),
                headLength.length(),
                neckWidth(),
                headWidth.length());
    }
}
