package org.scarfwright.joint;

import java.util.Optional;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What a design must keep to although the geometry would allow more.
 *
 * <p><b>Source:</b> common practice. Tilt angles in use are 7° to 17°; 3° to 30° is a wide margin around them.
 */
public final class DesignRules {
    public static final Angle SHALLOWEST = Angle.ofDegrees(3);
    public static final Angle STEEPEST = Angle.ofDegrees(30);
    public static final Angle USUAL_FROM = Angle.ofDegrees(7);
    public static final Angle USUAL_TO = Angle.ofDegrees(17);

    private DesignRules() {}

    /** Refuses a head thicker than the neck's stock: such a joint can be drawn, but it is hardly ever meant. */
    public static Optional<JointRefusal> headThickerThanNeckStock(Length headThickness, Length neckStock) {
        if (!headThickness.isLongerThan(neckStock)) {
            return Optional.empty();
        }
        return Optional.of(new JointRefusal(
                "headThickness",
                Words.plain(headThickness),
                "is " + Words.plain(headThickness) + ", thicker than the neck stock of " + Words.plain(neckStock)
                        + "; make the head at most " + Words.plain(neckStock) + " or the neck thicker"));
    }

    /** Refuses an angle no neck has. */
    public static Optional<JointRefusal> angleOutOfRange(Angle angle) {
        if (angle.compareTo(SHALLOWEST) >= 0 && angle.compareTo(STEEPEST) <= 0) {
            return Optional.empty();
        }
        return Optional.of(new JointRefusal(
                "angle",
                Words.plain(angle),
                "is " + Words.plain(angle) + "; a design takes " + Words.plain(SHALLOWEST) + " to "
                        + Words.plain(STEEPEST) + ", usual are " + Words.plain(USUAL_FROM) + " to "
                        + Words.plain(USUAL_TO)));
    }

    /** True for angles in common use. */
    public static boolean usual(Angle angle) {
        return angle.compareTo(USUAL_FROM) >= 0 && angle.compareTo(USUAL_TO) <= 0;
    }
}
