package org.scarfwright.rack;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * Warp measured over the whole piece, and if somebody looked closer over its middle half too.
 *
 * @param bow rise along the length, flat face
 * @param crook rise along the length, edge
 * @param cup rise across the width, the most anywhere along the piece
 * @param twist lift of the fourth corner with three corners down
 * @param middle a second reading, which tells whether the warp is as even as {@link WarpLaw} takes it to be
 * @param readOn the day it was measured, because wood moves; empty when nobody measured it and it counts as flat
 */
public record Warp(
        Length bow,
        Length crook,
        Length cup,
        Length twist,
        MiddleReading middle,
        @Nullable LocalDate readOn) {
    /** Nobody measured it. */
    public static final Warp UNMEASURED = new Warp(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO, null);

    /** Read over the whole piece only. */
    public Warp(Length bow, Length crook, Length cup, Length twist, @Nullable LocalDate readOn) {
        this(bow, crook, cup, twist, MiddleReading.NONE, readOn);
    }

    public boolean isMeasured() {
        return readOn != null;
    }
}
