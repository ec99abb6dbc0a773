package org.scarfwright.joint;

import java.util.List;
import org.scarfwright.measure.Length;

/**
 * Holes for the tuners, and how near they come to the seam on the head's front face.
 *
 * @param fromNut centres along the front face, each from the nut
 */
public record TunerHoles(List<Length> fromNut) {
    /** A centre this near to the seam, or nearer, is worth moving. <b>Source:</b> common practice. */
    public static final Length CLEAR_OF_SEAM = Length.ofMm(5);

    public TunerHoles {
        fromNut = List.copyOf(fromNut);
    }

    /** Centres within {@link #CLEAR_OF_SEAM} of the seam, in their order; empty where the head has none. */
    public List<Length> nearSeam(ScarfJoint joint) {
        Length seam = joint.seamFromNut();
        return seam == null
                ? List.of()
                : fromNut.stream()
                        .filter(hole -> !distance(hole, seam).isLongerThan(CLEAR_OF_SEAM))
                        .toList();
    }

    /** How far a centre lies from the seam. */
    public static Length distance(Length hole, Length seam) {
        return hole.isLongerThan(seam) ? hole.minus(seam) : seam.minus(hole);
    }

    /** Centres that do not lie on the head at all. */
    public List<Length> offTheHead(Length headLength) {
        return fromNut.stream()
                .filter(hole -> !hole.isPositive() || !hole.isShorterThan(headLength))
                .toList();
    }
}
