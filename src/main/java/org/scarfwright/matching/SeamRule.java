package org.scarfwright.matching;

import java.util.List;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.JointRefusal;
import org.scarfwright.joint.ScarfJoint;

/** The joint lies on the wood: underlaid, its seam falls on the head and not off the tip. About a design, not about a piece. */
final class SeamRule {
    static final String NAME = "seam";

    private SeamRule() {}

    static Verdict judge(JointInput input) {
        List<JointRefusal> refusals = ScarfJoint.refusals(input);
        if (refusals.isEmpty()) {
            return Verdict.FITS;
        }
        JointRefusal first = refusals.get(0);
        String what = switch (first.field()) {
            case "headLength" -> "the head";
            case "neckLength" -> "the neck";
            case "angle" -> "the angle";
            case "headThickness" -> "the head's thickness";
            case "neckThickness" -> "the neck's thickness";
            default -> "the width";
        };
        return new Verdict.Refused(
                NAME,
                input.arrangement().word() + " at " + input.angle() + " cannot be: " + what + " " + first.reason(),
                null);
    }
}
