package org.scarfwright.matching.search;

import java.util.List;

/**
 * What a search found.
 *
 * @param status how good it is proved to be
 * @param levels value and proved bound of each level, in their order
 * @param layouts one for each piece that is cut, in order of pieces
 * @param pairs one for each neck that is made, in order of lines
 * @param engine which search ran, for people
 * @param seconds wall time
 */
public record SearchResult(
        Status status, List<Level> levels, List<Layout> layouts, List<Pair> pairs, String engine, double seconds) {
    public SearchResult {
        levels = List.copyOf(levels);
        layouts = List.copyOf(layouts);
        pairs = List.copyOf(pairs);
    }

    /** How good a result is proved to be. */
    public enum Status {
        /** Every level is proved best. */
        PROVED,
        /** A plan with a bound that is not reached. */
        GAP
    }

    /** The five things compared, in order. */
    public enum Measure {
        FILLED,
        BOOK_VALUE,
        PIECES,
        SET_UPS,
        PLANED
    }

    /**
     * Value and bound of one level, given that the levels before it are held.
     *
     * <p>{@code FILLED} is the sum of the weights of the necks made and wants to be high; the others want to be low.
     * {@code BOOK_VALUE} is the sum over the pieces cut of their value less the value of their rests. {@code PIECES} counts
     * the pieces cut. {@code SET_UPS} counts the distinct set-ups of all bevels cut. {@code PLANED} is the sum over segments
     * of {@link SearchProblem.Preparation#planedMm3}.
     *
     * @param value weight filled; hundredths; count; count; cubic millimetres
     * @param bound no plan is better than this on this level, the levels before it being as good as here
     */
    public record Level(Measure measure, long value, long bound) {
        public boolean proved() {
            return value == bound;
        }
    }

    /** How one piece is cut: the segments of the chosen preparation, in their order. */
    public record Layout(int piece, int preparation, List<SegmentUse> segments) {
        public Layout {
            segments = List.copyOf(segments);
        }
    }

    /**
     * Groups along one segment from its left end. Each group is one part or two of the same angle that share a bevel, and
     * is followed by a square cut.
     */
    public record SegmentUse(List<Group> groups) {
        public SegmentUse {
            groups = List.copyOf(groups);
        }
    }

    /** One or two needs, by index, that take one bevel cut. */
    public record Group(List<Integer> needs) {
        public Group {
            needs = List.copyOf(needs);
        }
    }

    /**
     * One neck: the pieces its two parts come from.
     *
     * @param option index into the line's options
     */
    public record Pair(int line, int option, int neckPiece, int headPiece) {}
}
