package org.scarfwright.necks;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Length;

/** Which pieces of the shop could give the two parts of a joint, by the rules of a match. */
public interface WoodOnTheRack {
    /** Extra length on each part beside the saw's truing, and extra width on both sides together: what a new design has. */
    Length ALLOWANCE = Length.ofMm(2);

    /** What the joint asks of wood in its arrangement, and which pieces have it: of any wood, wings allowed. */
    Serving serving(ScarfJoint joint);

    record Serving(PartWood neck, PartWood head) {}

    /**
     * One part.
     *
     * @param length of the stretch it takes on the shop's first saw: as sawn, with allowance, truing and kerf
     * @param width with allowance
     * @param thickness the least it may have at the saw
     * @param pieces codes of some that could serve, in order
     * @param serving how many could serve of those that were looked at
     * @param all whether every piece large enough was looked at
     * @param nearest when none could serve, the one that comes nearest; null when the rack has none
     */
    record PartWood(
            Length length,
            Length width,
            Length thickness,
            List<String> pieces,
            int serving,
            boolean all,
            @Nullable Nearest nearest) {
        public PartWood {
            pieces = List.copyOf(pieces);
        }
    }

    /**
     * A piece that could not serve.
     *
     * @param reasons each reads on from the piece: 12.4 mm too short underlaid; never empty
     */
    record Nearest(String piece, List<String> reasons) {
        public Nearest {
            reasons = List.copyOf(reasons);
        }
    }
}
