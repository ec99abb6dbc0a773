package org.scarfwright.rack;

import org.scarfwright.measure.Length;

/**
 * A reading of twist with two straight sticks laid across a piece and sighted over: their near ends are brought in line, and
 * the gap is read at the far ends.
 *
 * <p>Over the distance between them one stick is turned against the other by the angle whose sine is gap / stick. The piece
 * turns with them, evenly along it, so over its whole length L its width W lifts by
 *
 * <p>d = gap · (W / stick) · (L / distance),
 *
 * <p>which is what the fourth corner lifts when the other three lie flat. Longer sticks than the piece is wide show more than
 * the piece has; sticks set in from the ends show less.
 *
 * <p>Range: all positive but the gap, which may be zero; distance at most L. <b>Source:</b> derived here, by similar triangles;
 * the angle itself cancels across the width, and along the length it is small (a gap of a quarter of the stick is 14°).
 *
 * @param gap read at the far ends
 * @param stick length of each stick, from the ends in line to the ends where the gap is read
 * @param distance along the piece from one stick to the other
 */
public record WindingSticks(Length gap, Length stick, Length distance) {

    /** Lift of the fourth corner of a piece of this length and width; rounded up. */
    public Length twist(Length length, Length width) {
        return Length.upFromMm(gap.mm() * (width.mm() / stick.mm()) * (length.mm() / distance.mm()));
    }
}
