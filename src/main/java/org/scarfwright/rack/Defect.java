package org.scarfwright.rack;

import org.scarfwright.measure.Length;

/**
 * A flaw in a stretch of a piece, measured from its left end and from its near edge.
 *
 * @param structural false when it is only for looks
 */
public record Defect(
        Kind kind, Length fromLength, Length toLength, Length fromWidth, Length toWidth, boolean structural) {
    /** What the flaw is. */
    public enum Kind {
        KNOT,
        CHECK,
        PITH,
        STAIN,
        SCREW_HOLE,
        OTHER
    }
}
