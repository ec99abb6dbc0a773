package org.scarfwright.joint;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;

/**
 * The wood of both parts once they are glued: two blocks, each with one slanted end.
 *
 * <p><b>Source:</b> derived here: thickness × width × half the sum of front and back.
 */
public final class GluedBlank {
    private GluedBlank() {}

    /** Nominal volume, each part as wide as the joint says, wings left out; to the nearest cubic micrometre. */
    public static Volume volume(ScarfJoint joint) {
        JointInput in = joint.input();
        return part(in.neckThickness(), in.neckWidth(), joint.neckFront().plus(joint.neckBack()))
                .plus(part(in.headThickness(), in.headWidth(), joint.headFront().plus(joint.headBack())));
    }

    private static Volume part(Length thickness, Length width, Length frontAndBack) {
        BigDecimal twice =
                new BigDecimal(Volume.of(thickness, width, frontAndBack).um3());
        return new Volume(
                twice.divide(BigDecimal.valueOf(2), 0, RoundingMode.HALF_UP).toBigInteger());
    }
}
