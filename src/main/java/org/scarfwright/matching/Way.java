package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.NeckDesign;

/** One way to make a neck of a design: an arrangement at an angle, whose two parts therefore have the same angle. */
record Way(ScarfJoint joint, PartNeed neck, PartNeed head) {

    Arrangement arrangement() {
        return neck.arrangement();
    }

    Angle angle() {
        return neck.angle();
    }

    /** Every way the design allows whose joint can be; underlaid before overlaid, shallow before steep. */
    static List<Way> of(NeckDesign design) {
        List<Way> ways = new ArrayList<>();
        for (JointInput input : inputs(design)) {
            if (SeamRule.judge(input) instanceof Verdict.Fits) {
                ways.add(of(design, ScarfJoint.of(input)));
            }
        }
        return List.copyOf(ways);
    }

    /** Why the other ways of the design cannot be. */
    static List<Verdict.Refused> impossible(NeckDesign design) {
        List<Verdict.Refused> refused = new ArrayList<>();
        for (JointInput input : inputs(design)) {
            if (SeamRule.judge(input) instanceof Verdict.Refused r) {
                refused.add(r);
            }
        }
        return List.copyOf(refused);
    }

    private static List<JointInput> inputs(NeckDesign design) {
        List<JointInput> inputs = new ArrayList<>();
        for (Arrangement arrangement : Arrangement.values()) {
            if (!design.arrangements().contains(arrangement)) {
                continue;
            }
            for (Angle angle : design.angles().stream().sorted().distinct().toList()) {
                inputs.add(new JointInput(
                        arrangement,
                        angle,
                        design.neckThickness().length(),
                        design.headThickness().length(),
                        design.neckLength().length(),
                        design.headLength().length(),
                        design.neckWidth(),
                        design.headWidth().length()));
            }
        }
        return inputs;
    }

    private static Way of(NeckDesign design, ScarfJoint joint) {
        Arrangement arrangement = joint.input().arrangement();
        Angle angle = joint.input().angle();
        Length end = design.endAllowance().length();
        Length side = design.sideAllowance().length();
        Length headWidth = design.headWidth().length().plus(side);
        Length neckWidth = design.neckWidth().plus(side);
        // Underlaid, the first part of the head's front face is neck wood: as wide as the outline, or widened by wings.
        Length full = arrangement == Arrangement.UNDERLAID ? neckWidth.max(headWidth) : neckWidth;
        PartNeed neck = new PartNeed(
                design,
                Role.NECK,
                arrangement,
                angle,
                joint.neckShort().plus(end),
                design.neckThickness().length(),
                design.wingsAllowed() ? neckWidth : full,
                full);
        PartNeed head = new PartNeed(
                design,
                Role.HEAD,
                arrangement,
                angle,
                joint.headShort().plus(end),
                design.headThickness().length(),
                headWidth,
                headWidth);
        return new Way(joint, neck, head);
    }
}
