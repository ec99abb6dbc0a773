package org.scarfwright.joint;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What one bevel cut asks of a saw, with the piece on edge: the angle on its scale or jig, the reach along the cut, and the depth
 * through the piece's width.
 *
 * <p><b>Source:</b> derived here: the cut through thickness s is s / sin a long.
 *
 * @param angle tilt angle, above 0° and below 90°
 * @param sawnThickness s, of the piece at the saw
 * @param pieceWidth of the piece at the saw
 */
public record SawNeed(Angle angle, Length sawnThickness, Length pieceWidth) {

    /** Reach along the cut: s / sin a, rounded up. */
    public Length reach() {
        return Bevel.faceLength(sawnThickness, angle);
    }

    /** Depth of cut: the piece's width. */
    public Length depth() {
        return pieceWidth;
    }

    /**
     * Every reason why a saw cannot make this cut, each with what would fit; empty when it can. They read on from the saw's name:
     * "Mitre saw cuts 65.0 mm deep, but …".
     */
    public List<String> refusals(SawLimits saw) {
        List<String> found = new ArrayList<>();
        if (angle.compareTo(saw.shallowest()) < 0) {
            found.add("cannot be set to " + angle + "; its shallowest is " + saw.shallowest()
                    + ": use a steeper angle, or another saw");
        }
        if (angle.compareTo(saw.steepest()) > 0) {
            found.add("cannot be set to " + angle + "; its steepest is " + saw.steepest()
                    + ": use a shallower angle, or another saw");
        }
        if (pieceWidth.isLongerThan(saw.depth())) {
            found.add("cuts " + Words.plain(saw.depth()) + " deep, but the piece on edge is " + Words.plain(pieceWidth)
                    + " wide: rip it to " + Words.plain(saw.depth()) + " or less, or use a deeper saw");
        }
        if (reach().isLongerThan(saw.reach())) {
            double reach = saw.reach().mm();
            StringBuilder sentence = new StringBuilder("reaches " + Words.plain(saw.reach()) + " along a cut, but "
                    + angle + " through " + Words.plain(sawnThickness) + " is " + Words.mmAtLeast(reach().mm())
                    + " long: thin the piece to " + Words.mmAtMost(reach * angle.sin()) + " first");
            if (sawnThickness.mm() < reach) {
                sentence.append(", use an angle of at least ")
                        .append(Words.degreesMore(Math.asin(sawnThickness.mm() / reach)));
            }
            found.add(sentence.append(", or use a saw that reaches further").toString());
        }
        return List.copyOf(found);
    }
}
