package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.RestValue;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;

/**
 * Tries everything: every preparation of every piece, every way to give every neck its two segments, every order of the parts
 * of a segment and every choice of which neighbours share a bevel. It reads the written rule of {@link SearchProblem.Segment}
 * and shares no code with the search. Only for a handful of necks.
 */
final class ExhaustiveSearch {
    private record Spot(int piece, int segment) {}

    private final SearchProblem problem;
    private int[] preparation = new int[0];
    private List<Spot> spots = List.of();
    private final Map<Spot, List<Integer>> parts = new HashMap<>();
    private final Map<String, Long> shortest = new HashMap<>();
    private long[] best = {0, 0, 0, 0, 0};

    private ExhaustiveSearch(SearchProblem problem) {
        this.problem = problem;
    }

    /** Best values: weight filled, hundredths, pieces, set-ups, cubic millimetres planed. */
    static long[] levels(SearchProblem problem) {
        ExhaustiveSearch search = new ExhaustiveSearch(problem);
        search.prepare(new int[problem.pieces().size()], 0);
        return search.best.clone();
    }

    private void prepare(int[] chosen, int piece) {
        if (piece == chosen.length) {
            preparation = chosen;
            spots = new ArrayList<>();
            parts.clear();
            for (int p = 0; p < chosen.length; p++) {
                if (chosen[p] >= 0) {
                    for (int s = 0; s < prepared(p).segments().size(); s++) {
                        spots.add(new Spot(p, s));
                    }
                }
            }
            fill(0, 0, 0);
            return;
        }
        for (int r = -1; r < problem.pieces().get(piece).preparations().size(); r++) {
            chosen[piece] = r;
            prepare(chosen, piece + 1);
        }
    }

    private Preparation prepared(int piece) {
        return problem.pieces().get(piece).preparations().get(preparation[piece]);
    }

    /** Makes the next neck of a line in every way from a number on, or goes on to the next line. */
    private void fill(int line, int already, int from) {
        if (line == problem.lines().size()) {
            compare();
            return;
        }
        fill(line + 1, 0, 0);
        Line wanted = problem.lines().get(line);
        if (already == wanted.quantity()) {
            return;
        }
        int ways = wanted.options().size() * spots.size() * spots.size();
        for (int way = from; way < ways; way++) {
            Option option = wanted.options().get(way / (spots.size() * spots.size()));
            Spot neck = spots.get(way / spots.size() % spots.size());
            Spot head = spots.get(way % spots.size());
            boolean paired = wanted.pairing().samePiece()
                    ? neck.piece() == head.piece()
                    : wanted.pairing().neckGroup()[neck.piece()] >= 0
                            && wanted.pairing().headGroup()[head.piece()] >= 0
                            && wanted.pairing()
                                    .compatible()[wanted.pairing().neckGroup()[neck.piece()]][
                                    wanted.pairing().headGroup()[head.piece()]];
            if (!paired || !listed(option.neck(), neck) || !listed(option.head(), head)) {
                continue;
            }
            at(neck).add(option.neck());
            at(head).add(option.head());
            if (used(neck) >= 0 && used(head) >= 0) {
                fill(line, already + 1, way);
            }
            at(head).remove(at(head).size() - 1);
            at(neck).remove(at(neck).size() - 1);
        }
    }

    private List<Integer> at(Spot spot) {
        return parts.computeIfAbsent(spot, s -> new ArrayList<>());
    }

    private boolean listed(int need, Spot spot) {
        return in(segment(spot).needs(), need) || in(segment(spot).alone(), need);
    }

    private static boolean in(int[] values, int wanted) {
        return Arrays.stream(values).anyMatch(v -> v == wanted);
    }

    private Segment segment(Spot spot) {
        return prepared(spot.piece()).segments().get(spot.segment());
    }

    /** The shortest length the parts of a segment use, or -1 when no order of them fits. */
    private long used(Spot spot) {
        List<Integer> here = new ArrayList<>(at(spot));
        if (here.isEmpty()) {
            return 0;
        }
        here.sort(null);
        String key = spot.piece() + "/" + preparation[spot.piece()] + "/" + spot.segment() + here;
        Long known = shortest.get(key);
        if (known == null) {
            known = orders(here, 0, spot);
            if (known == Long.MAX_VALUE
                    || known - prepared(spot.piece()).squareKerfUm()
                            > segment(spot).lengthUm()) {
                known = -1L;
            }
            shortest.put(key, known);
        }
        return known;
    }

    /** Shortest over all orders of the parts from {@code at} on. */
    private long orders(List<Integer> order, int at, Spot spot) {
        if (at == order.size()) {
            return along(order, 0, spot);
        }
        long least = Long.MAX_VALUE;
        for (int i = at; i < order.size(); i++) {
            swap(order, at, i);
            least = Math.min(least, orders(order, at + 1, spot));
            swap(order, at, i);
        }
        return least;
    }

    private static void swap(List<Integer> list, int i, int j) {
        int held = list.get(i);
        list.set(i, list.get(j));
        list.set(j, held);
    }

    /** Walks along one order: the next part by itself, or with its neighbour when both have one angle and may share. */
    private long along(List<Integer> order, int at, Spot spot) {
        if (at == order.size()) {
            return 0;
        }
        Preparation prepared = prepared(spot.piece());
        int angle = problem.needs().get(order.get(at)).angle();
        if (prepared.bevelUm()[angle] < 0) {
            return Long.MAX_VALUE;
        }
        long cut = prepared.bevelUm()[angle] + prepared.squareKerfUm();
        long least = plus(problem.needs().get(order.get(at)).shortUm() + cut, along(order, at + 1, spot));
        if (at + 1 < order.size()
                && in(segment(spot).needs(), order.get(at))
                && in(segment(spot).needs(), order.get(at + 1))
                && problem.needs().get(order.get(at + 1)).angle() == angle) {
            long two = problem.needs().get(order.get(at)).shortUm()
                    + problem.needs().get(order.get(at + 1)).shortUm();
            least = Math.min(least, plus(two + cut, along(order, at + 2, spot)));
        }
        return least;
    }

    private static long plus(long a, long b) {
        return b == Long.MAX_VALUE ? b : a + b;
    }

    private void compare() {
        long filled = 0;
        long cents = 0;
        long pieces = 0;
        long planed = 0;
        TreeSet<Integer> setUps = new TreeSet<>();
        Map<Integer, Integer> necks = new HashMap<>();
        for (int p = 0; p < preparation.length; p++) {
            if (preparation[p] < 0) {
                continue;
            }
            StockPiece piece = problem.pieces().get(p);
            boolean cut = false;
            cents += piece.valueCents();
            for (int s = 0; s < prepared(p).segments().size(); s++) {
                Spot spot = new Spot(p, s);
                Segment segment = segment(spot);
                long rest = Math.max(0, segment.lengthUm() - used(spot));
                cents -= value(segment, rest);
                for (int need : at(spot)) {
                    cut = true;
                    setUps.add(prepared(p).setUp()[problem.needs().get(need).angle()]);
                    if (problem.needs().get(need).role() == SearchProblem.Role.NECK) {
                        necks.merge(problem.needs().get(need).line(), 1, Integer::sum);
                    }
                }
                if (!at(spot).isEmpty()) {
                    long exact = (segment.lengthUm() - rest) * prepared(p).planedMm3PerMetre();
                    planed += exact / 1_000_000 + (exact % 1_000_000 > 0 ? 1 : 0);
                }
            }
            if (!cut) {
                return;
            }
            pieces++;
        }
        for (Map.Entry<Integer, Integer> e : necks.entrySet()) {
            filled += e.getValue() * problem.lines().get(e.getKey()).weight();
        }
        long[] now = {filled, cents, pieces, setUps.size(), planed};
        long[] mine = now.clone();
        long[] theirs = best.clone();
        mine[0] = -mine[0];
        theirs[0] = -theirs[0];
        if (Arrays.compare(mine, theirs) < 0) {
            best = now;
        }
    }

    private static long value(Segment segment, long rest) {
        long rate = 0;
        for (RestValue r : segment.rests()) {
            if (r.fromUm() <= rest) {
                rate = r.centsPerKm();
            }
        }
        return rest * rate / 1_000_000_000L;
    }
}
