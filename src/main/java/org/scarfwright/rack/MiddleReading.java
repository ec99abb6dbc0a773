package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * A second reading, over the middle half of a piece: from a quarter to three quarters of its length.
 *
 * @param bow rise under a straightedge half as long as the piece, laid on the middle of the hollow face; empty when not read
 * @param crook the same on the hollow edge
 * @param twist how far the middle half is twisted over the piece's width, as winding sticks at its quarter points show it
 */
public record MiddleReading(
        @Nullable Length bow,
        @Nullable Length crook,
        @Nullable Length twist) {
    /** Nobody read the middle. */
    public static final MiddleReading NONE = new MiddleReading(null, null, null);

    public boolean isNone() {
        return equals(NONE);
    }
}
