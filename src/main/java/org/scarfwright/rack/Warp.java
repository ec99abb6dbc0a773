package org.scarfwright.rack;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * Warp measured over the whole piece.
 *
 * @param bow rise along the length, flat face
 * @param crook rise along the length, edge
 * @param cup rise across the width
 * @param twist lift of the fourth corner with three corners down
 * @param readOn the day it was measured, because wood moves; empty when nobody measured it and it counts as flat
 */
public record Warp(
        Length bow,
        Length crook,
        Length cup,
        Length twist,
        @Nullable LocalDate readOn) {
    /** Nobody measured it. */
    public static final Warp UNMEASURED = new Warp(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO, null);

    public boolean isMeasured() {
        return readOn != null;
    }

    public boolean isFlat() {
        return bow.um() + crook.um() + cup.um() + twist.um() == 0;
    }
}
