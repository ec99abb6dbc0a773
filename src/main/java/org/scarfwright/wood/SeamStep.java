package org.scarfwright.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.wood.DimensionalChange.Coefficient;

/**
 * The step between two woods that were flush across a seam, after a change of moisture: half of what one moves more than the
 * other, since both move evenly about the middle of the seam. It is what they would do unglued; the glue line holds part of it
 * back as stress.
 *
 * <p><b>Source:</b> derived here from the movement of Wood Handbook (FPL-GTR-282), chapter 13.
 *
 * @param least at each edge, where published figures of a wood differ; else the same as most
 * @param most at each edge
 */
public record SeamStep(Length least, Length most) {

    /**
     * @param lowest moisture of the year, in the range of {@link DimensionalChange}
     * @param highest moisture of the year, not below the lowest, in the same range
     */
    public record Year(Moisture lowest, Moisture highest) {
        public Year {
            if (highest.compareTo(lowest) < 0) {
                throw new IllegalArgumentException("the highest, " + highest + ", is below the lowest, " + lowest);
            }
        }

        public MoistureChange change() {
            return highest.minus(lowest);
        }
    }

    /**
     * @param width of the seam, across the piece
     * @throws IllegalArgumentException outside 6 to 14 %, with a sentence that tells it
     */
    public static SeamStep of(Coefficient one, Coefficient other, Length width, Year year) {
        return new SeamStep(step(gap(one, other), width, year), step(reach(one, other), width, year));
    }

    /** The least two figures out of the ranges can differ by: nothing where the ranges overlap. */
    private static BigDecimal gap(Coefficient one, Coefficient other) {
        return one.low()
                .subtract(other.high())
                .max(other.low().subtract(one.high()))
                .max(BigDecimal.ZERO);
    }

    /** The most they can differ by. */
    private static BigDecimal reach(Coefficient one, Coefficient other) {
        return one.high().subtract(other.low()).max(other.high().subtract(one.low()));
    }

    private static Length step(BigDecimal difference, Length width, Year year) {
        Length apart = DimensionalChange.movement(width, difference, year.lowest(), year.highest());
        return Length.ofMm(apart.toMm().divide(BigDecimal.valueOf(2), 3, RoundingMode.HALF_UP));
    }
}
