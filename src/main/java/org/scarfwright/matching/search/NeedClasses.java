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
 * Needs that no segment and no pairing tells apart: same role, angle and length, lines that pair the same, and listed on the same
 * segments. A rack of many thousand pieces is then looked at once for each class and not once for each order. Found by splitting:
 * all needs of one look are a class until a segment lists some of them and not the others.
 */
final class NeedClasses {
    /** By need; classes are numbered by their first need. */
    final int[] classOf;
    /** By class: its first need. */
    final int[] first;
    /** By line: lines with equal pairing have equal numbers, given in order of lines. */
    final int[] pairingOfLine;

    private final int[] size;
    private final int[] listed;
    private final int[] splitTo;
    private int classes;

    NeedClasses(SearchProblem problem) {
        int needs = problem.needs().size();
        pairingOfLine = pairings(problem);
        classOf = new int[needs];
        size = new int[needs];
        listed = new int[needs];
        splitTo = new int[needs];
        Arrays.fill(splitTo, -1);
        Map<List<Object>, Integer> byLook = new HashMap<>();
        for (int n = 0; n < needs; n++) {
            Need need = problem.needs().get(n);
            List<Object> look = List.of(need.role(), need.angle(), need.shortUm(), pairingOfLine[need.line()]);
            classOf[n] = byLook.computeIfAbsent(look, k -> classes++);
            size[classOf[n]]++;
        }
        IdentityHashMap<int[], Boolean> done = new IdentityHashMap<>();
        for (StockPiece piece : problem.pieces()) {
            for (Preparation r : piece.preparations()) {
                for (Segment s : r.segments()) {
                    for (int[] list : List.of(s.needs(), s.alone())) {
                        if (done.put(list, true) == null) {
                            split(list);
                        }
                    }
                }
            }
        }
        first = number();
    }

    private void split(int[] list) {
        for (int n : list) {
            listed[classOf[n]]++;
        }
        for (int n : list) {
            int c = classOf[n];
            if (listed[c] > 0 && listed[c] < size[c]) {
                if (splitTo[c] < 0) {
                    splitTo[c] = classes++;
                    size[splitTo[c]] = listed[c];
                }
                classOf[n] = splitTo[c];
            }
        }
        for (int n : list) {
            // Of a class that was split, what went over has the new number and what stayed is not in the list.
            listed[classOf[n]] = 0;
        }
        for (int c = 0; c < classes; c++) {
            if (splitTo[c] >= 0) {
                size[c] -= listed[c];
                listed[c] = 0;
                splitTo[c] = -1;
            }
        }
    }

    private int[] number() {
        int[] to = new int[classes];
        Arrays.fill(to, -1);
        int[] firsts = new int[classes];
        int next = 0;
        for (int n = 0; n < classOf.length; n++) {
            if (to[classOf[n]] < 0) {
                firsts[next] = n;
                to[classOf[n]] = next++;
            }
            classOf[n] = to[classOf[n]];
        }
        return Arrays.copyOf(firsts, next);
    }

    private static int[] pairings(SearchProblem problem) {
        int[] result = new int[problem.lines().size()];
        IdentityHashMap<Pairing, Integer> known = new IdentityHashMap<>();
        Map<Integer, List<Pairing>> byHash = new HashMap<>();
        int next = 0;
        for (int l = 0; l < result.length; l++) {
            Pairing pairing = problem.lines().get(l).pairing();
            Integer number = known.get(pairing);
            if (number == null) {
                List<Pairing> candidates = byHash.computeIfAbsent(hash(pairing), h -> new ArrayList<>());
                for (Pairing other : candidates) {
                    if (same(other, pairing)) {
                        number = known.get(other);
                    }
                }
                if (number == null) {
                    number = next++;
                    candidates.add(pairing);
                }
                known.put(pairing, number);
            }
            result[l] = number;
        }
        return result;
    }

    private static int hash(Pairing p) {
        return Arrays.hashCode(p.neckGroup()) * 31 + Arrays.hashCode(p.headGroup());
    }

    private static boolean same(Pairing a, Pairing b) {
        return a.samePiece() == b.samePiece()
                && Arrays.equals(a.neckGroup(), b.neckGroup())
                && Arrays.equals(a.headGroup(), b.headGroup())
                && Arrays.deepEquals(a.compatible(), b.compatible());
    }
}
