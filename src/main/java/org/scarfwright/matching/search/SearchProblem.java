package org.scarfwright.matching.search;

import java.util.List;

/**
 * One matching question in whole numbers: what lies on the rack, which parts each order line could be made of, and which
 * parts may be paired. All rules have been applied before: a part that may not lie on a piece is not listed there.
 *
 * <p>Lengths are whole micrometres along the piece, money whole hundredths, wood planed away whole cubic millimetres.
 *
 * @param lines what is ordered; indices are used everywhere else
 * @param needs every part of every option of every line
 * @param pieces ties are broken by their order
 * @param angles how many distinct angles there are; a need's angle is an index below this
 * @param setUps how many distinct saw set-ups there are; see {@link Preparation}
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops of the search and never compared
public record SearchProblem(List<Line> lines, List<Need> needs, List<StockPiece> pieces, int angles, int setUps) {

    public SearchProblem {
        lines = List.copyOf(lines);
        needs = List.copyOf(needs);
        pieces = List.copyOf(pieces);
    }

    /**
     * The highest count of necks, each times its line's weight: no plan can fill more than is ordered.
     */
    public long orderedWeight() {
        long sum = 0;
        for (Line line : lines) {
            sum = Math.addExact(sum, Math.multiplyExact(line.weight(), (long) line.quantity()));
        }
        return sum;
    }

    /** Which part of a neck. */
    public enum Role {
        NECK,
        HEAD
    }

    /**
     * One order line: so many necks of one design.
     *
     * @param weight what one filled neck counts, at least 1
     * @param options the ways to make one; each is an arrangement at an angle. Empty when nothing can make it
     * @param pairing which neck piece goes with which head piece
     */
    public record Line(String code, int quantity, long weight, List<Option> options, Pairing pairing) {
        public Line {
            options = List.copyOf(options);
        }
    }

    /**
     * One way to make a neck of a line.
     *
     * @param neck index into {@link SearchProblem#needs}
     * @param head index into {@link SearchProblem#needs}
     */
    public record Option(int neck, int head) {}

    /**
     * Which pieces may be paired for a line. Pieces are sorted into groups that behave alike; both parts from one piece is
     * the pair of that piece with itself.
     *
     * @param neckGroup for each piece the group it is in as a neck, or -1 when it is never one for this line
     * @param headGroup the same as a head
     * @param compatible by neck group, then head group
     * @param samePiece both parts must come from one piece; groups and compatibility are then ignored
     */
    public record Pairing(int[] neckGroup, int[] headGroup, boolean[][] compatible, boolean samePiece) {
        public boolean allows(int neckPiece, int headPiece) {
            if (samePiece) {
                return neckPiece == headPiece;
            }
            int n = neckGroup[neckPiece];
            int h = headGroup[headPiece];
            return n >= 0 && h >= 0 && compatible[n][h];
        }
    }

    /**
     * One part.
     *
     * @param line index of the order line it belongs to
     * @param angle index of the tilt angle its bevel is cut at
     * @param shortUm its short side with allowances, along the piece
     */
    public record Need(int line, Role role, int angle, long shortUm) {}

    /**
     * One piece of wood and the ways to prepare it. A piece is used under exactly one preparation, or not at all.
     *
     * @param valueCents book value of the whole piece
     */
    public record StockPiece(String code, long valueCents, List<Preparation> preparations) {
        public StockPiece {
            preparations = List.copyOf(preparations);
        }
    }

    /**
     * A piece brought to one sawn thickness and, later, ripped into lanes.
     *
     * @param label what this preparation is, for people
     * @param sawnUm thickness at the saw
     * @param squareKerfUm length lost to one square cut
     * @param bevelUm by angle: length taken by one bevel cut, run plus kerf along the piece; -1 when no saw makes it here
     * @param setUp by angle: index of the saw set-up this cut needs; -1 when no saw makes it here
     * @param planedMm3PerMetre wood planed away per metre of segment that is used up; see {@link #planedMm3}
     * @param segments clear stretches (and lanes) parts can lie on
     */
    public record Preparation(
            String label,
            long sawnUm,
            long squareKerfUm,
            long[] bevelUm,
            int[] setUp,
            long planedMm3PerMetre,
            List<Segment> segments) {
        public Preparation {
            segments = List.copyOf(segments);
        }

        /**
         * Wood planed away for the parts of one segment, in whole cubic millimetres: the stretch that does not come back as
         * a rest, times {@code planedMm3PerMetre}, rounded up once for each segment that has parts. A segment without parts
         * counts nothing.
         *
         * @param usedUpUm length of the segment without its rest
         */
        public long planedMm3(long usedUpUm) {
            return -Math.floorDiv(-Math.multiplyExact(usedUpUm, planedMm3PerMetre), 1_000_000L);
        }
    }

    /**
     * A clear stretch of one lane. Parts with short sides S1..Sm, grouped in g = sum over angles of ceil(m_a / 2) groups,
     * each a part or a pair that shares its bevel, use
     * {@code U = sum(S) + sum over angles of ceil(m_a/2) * bevelUm[a] + g * squareKerfUm}. They fit when
     * {@code U - squareKerfUm <= lengthUm}: the last square cut is not made when what is left behind the last part is shorter
     * than the cut. The rest is {@code max(0, lengthUm - U)}. A segment without parts, on a piece that is cut
     * elsewhere, comes back whole as a rest.
     *
     * <p>A pair is flattened as one section before its bevel is cut, and a longer section of a warped piece leaves less
     * thickness. So a need may be allowed here by itself and not in a pair: it is then listed in {@code alone}, forms a
     * group of its own, takes a bevel and a square cut of its own and does not count in m_a.
     *
     * @param lengthUm clear length
     * @param needs needs that may lie here, by themselves or in a pair with another of these; ascending
     * @param rests what a rest is worth by its length, see {@link RestValue}; shorter than the first entry is waste
     * @param alone needs that may lie here and share their bevel with no other part; ascending, none of them in needs
     */
    public record Segment(long lengthUm, int[] needs, List<RestValue> rests, int[] alone) {
        private static final int[] NONE = new int[0];

        public Segment {
            rests = List.copyOf(rests);
        }

        /** A segment where every need may share its bevel. */
        public Segment(long lengthUm, int[] needs, List<RestValue> rests) {
            this(lengthUm, needs, rests, NONE);
        }

        /** What is left behind parts that use so much; see above. */
        public long restUm(long usedUm) {
            return Math.max(0, lengthUm - usedUm);
        }

        /** Book value in hundredths of a rest of this length, rounded down; 0 when it is waste. */
        public long restCents(long restUm) {
            for (int i = rests.size() - 1; i >= 0; i--) {
                RestValue r = rests.get(i);
                if (restUm >= r.fromUm()) {
                    return Math.floorDiv(Math.multiplyExact(restUm, r.centsPerKm()), 1_000_000_000L);
                }
            }
            return 0;
        }
    }

    /**
     * From this length on a rest is worth so much per length. Entries ascend in both figures.
     *
     * @param fromUm shortest rest this entry holds for
     * @param centsPerKm hundredths per kilometre of rest
     */
    public record RestValue(long fromUm, long centsPerKm) {}
}
