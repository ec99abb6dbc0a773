package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Pairing;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;

/**
 * The segments of a rack, told apart only by what matters to parts: which classes of needs fit there, and how every pairing sorts
 * their piece. A <b>cell</b> is all segments alike in this. A rack of many thousand pieces has few of them, so that where a
 * need fits is a short list.
 *
 * <p>Segments are numbered in order of pieces, then preparations; cells by their first segment.
 */
final class Cells {
    /** By segment. */
    final int[] cellOfSegment;
    /** By piece: number of its first segment; one more entry than pieces. */
    final int[] firstSegment;

    private final NeedClasses alike;
    /** By cell: classes that fit, each times two, plus one where a part shares its bevel with no other. */
    private final List<int[]> fitting = new ArrayList<>();
    /** By cell: how the pairings sort its pieces; see {@link #group}. */
    private final List<int[]> sorting = new ArrayList<>();

    Cells(SearchProblem problem, NeedClasses alike) {
        this.alike = alike;
        int pieces = problem.pieces().size();
        firstSegment = new int[pieces + 1];
        for (int p = 0; p < pieces; p++) {
            int count = 0;
            for (Preparation r : problem.pieces().get(p).preparations()) {
                count += r.segments().size();
            }
            firstSegment[p + 1] = firstSegment[p] + count;
        }
        cellOfSegment = new int[firstSegment[pieces]];
        List<Pairing> pairings = pairings(problem);
        Offers offers = new Offers(problem);
        Map<Ints, Integer> sortings = new HashMap<>();
        Map<Long, Integer> cells = new HashMap<>();
        int next = 0;
        for (int p = 0; p < pieces; p++) {
            StockPiece piece = problem.pieces().get(p);
            Ints sorted = new Ints(sorting(pairings, p));
            int like = sortings.computeIfAbsent(sorted, k -> sortings.size());
            for (Preparation r : piece.preparations()) {
                for (Segment s : r.segments()) {
                    int offer = offers.of(r, s);
                    long key = ((long) offer << 32) | like;
                    Integer known = cells.get(key);
                    if (known == null) {
                        known = fitting.size();
                        cells.put(key, known);
                        fitting.add(offers.fitting.get(offer));
                        sorting.add(sorted.values());
                    }
                    cellOfSegment[next++] = known;
                }
            }
        }
    }

    private List<Pairing> pairings(SearchProblem problem) {
        List<Pairing> result = new ArrayList<>();
        for (int l = 0; l < alike.pairingOfLine.length; l++) {
            if (alike.pairingOfLine[l] == result.size()) {
                result.add(problem.lines().get(l).pairing());
            }
        }
        return result;
    }

    private static int[] sorting(List<Pairing> pairings, int piece) {
        int[] result = new int[2 * pairings.size()];
        for (int i = 0; i < pairings.size(); i++) {
            Pairing pairing = pairings.get(i);
            result[2 * i] = pairing.samePiece() ? piece : pairing.neckGroup()[piece];
            result[2 * i + 1] = pairing.samePiece() ? piece : pairing.headGroup()[piece];
        }
        return result;
    }

    int count() {
        return fitting.size();
    }

    /** The group that a line's pairing sorts the pieces of a cell into; below 0 where they are none of it. */
    int group(int cell, int line, boolean neck) {
        return sorting.get(cell)[2 * alike.pairingOfLine[line] + (neck ? 0 : 1)];
    }

    /**
     * By class of needs: the cells it fits in, ascending, each times two, plus one where a part shares its bevel with no other.
     */
    List<int[]> byClass() {
        int[] size = new int[alike.first.length];
        for (int[] fits : fitting) {
            for (int f : fits) {
                size[f / 2]++;
            }
        }
        List<int[]> result = new ArrayList<>();
        for (int s : size) {
            result.add(new int[s]);
        }
        Arrays.fill(size, 0);
        for (int cell = 0; cell < fitting.size(); cell++) {
            for (int f : fitting.get(cell)) {
                result.get(f / 2)[size[f / 2]++] = 2 * cell + f % 2;
            }
        }
        return result;
    }

    /** Compared by content. */
    @SuppressWarnings("ArrayRecordComponent")
    record Ints(int[] values) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Ints o && Arrays.equals(values, o.values);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(values);
        }
    }

    /** What segments take, each different list once. */
    private final class Offers {
        private final List<Need> needs;
        final List<int[]> fitting = new ArrayList<>();
        private final Map<Ints, Integer> known = new HashMap<>();
        /** By list of needs: one for each class. */
        private final IdentityHashMap<int[], int[]> firsts = new IdentityHashMap<>();

        Offers(SearchProblem problem) {
            needs = problem.needs();
        }

        int of(Preparation r, Segment s) {
            int[] shared = firsts.computeIfAbsent(s.needs(), this::firsts);
            int[] alone = firsts.computeIfAbsent(s.alone(), this::firsts);
            int[] found = new int[shared.length + alone.length];
            int size = 0;
            for (int n : shared) {
                if (fits(n, r, s)) {
                    found[size++] = 2 * alike.classOf[n];
                }
            }
            for (int n : alone) {
                if (fits(n, r, s)) {
                    found[size++] = 2 * alike.classOf[n] + 1;
                }
            }
            found = Arrays.copyOf(found, size);
            Integer number = known.get(new Ints(found));
            if (number == null) {
                number = fitting.size();
                known.put(new Ints(found), number);
                fitting.add(found);
            }
            return number;
        }

        private int[] firsts(int[] list) {
            return Arrays.stream(list)
                    .filter(n -> alike.first[alike.classOf[n]] == n)
                    .toArray();
        }

        private boolean fits(int n, Preparation r, Segment s) {
            Need need = needs.get(n);
            long bevel = r.bevelUm()[need.angle()];
            return bevel >= 0 && need.shortUm() + bevel <= s.lengthUm();
        }
    }
}
