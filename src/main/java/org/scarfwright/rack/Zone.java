package org.scarfwright.rack;

import org.scarfwright.measure.Length;

/**
 * A clear stretch of a piece, over its whole width, measured from its left end.
 *
 * @param from its left end
 * @param to its right end, further than {@code from}
 */
public record Zone(Length from, Length to) {
    public Zone {
        if (from.um() < 0 || to.um() <= from.um()) {
            throw new IllegalArgumentException("not a stretch: " + from + " to " + to);
        }
    }

    public Length length() {
        return to.minus(from);
    }
}
