package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Pair;
import org.scarfwright.matching.search.SearchResult.SegmentUse;
import org.scarfwright.matching.search.SearchResult.Status;

/**
 * What a maker does at the rack with a tape: the longest order first; both parts from one blank, the tightest it fits in; where
 * no blank takes both, the tightest piece for the neck and then the tightest for its head. Nothing is taken back. Common practice,
 * as told; no published source.
 */
final class HandRule implements MatchSearch {
    /** A stretch of a piece that wood is still left on, under one preparation. */
    private record Spot(int piece, int preparation, int segment) {}

    private static final class State {
        final SearchProblem problem;
        final int[] prepared;
        /** By piece and segment: what lies there. */
        final List<List<List<Integer>>> lying = new ArrayList<>();

        State(SearchProblem problem) {
            this.problem = problem;
            prepared = IntStream.range(0, problem.pieces().size()).map(p -> -1).toArray();
            for (SearchProblem.StockPiece piece : problem.pieces()) {
                List<List<Integer>> segments = new ArrayList<>();
                int most = piece.preparations().stream()
                        .mapToInt(r -> r.segments().size())
                        .max()
                        .orElse(0);
                for (int s = 0; s < most; s++) {
                    segments.add(new ArrayList<>());
                }
                lying.add(segments);
            }
        }

        /** Length left on a spot after these parts join what lies there; below 0 when they do not fit. */
        long left(Spot spot, int... joining) {
            if (prepared[spot.piece()] >= 0 && prepared[spot.piece()] != spot.preparation()) {
                return -1;
            }
            Preparation r = problem.pieces().get(spot.piece()).preparations().get(spot.preparation());
            Segment segment = r.segments().get(spot.segment());
            List<Integer> parts = new ArrayList<>(lying.get(spot.piece()).get(spot.segment()));
            for (int n : joining) {
                boolean listed =
                        Arrays.binarySearch(segment.needs(), n) >= 0 || Arrays.binarySearch(segment.alone(), n) >= 0;
                if (!listed || r.bevelUm()[problem.needs().get(n).angle()] < 0) {
                    return -1;
                }
                parts.add(n);
            }
            long used = 0;
            for (SearchResult.Group g : CutPlan.groups(problem, segment, parts).groups()) {
                for (int n : g.needs()) {
                    used += problem.needs().get(n).shortUm();
                }
                int angle = problem.needs().get(g.needs().get(0)).angle();
                used += r.bevelUm()[angle] + r.squareKerfUm();
            }
            return segment.lengthUm() + r.squareKerfUm() - used;
        }

        void lay(Spot spot, int need) {
            prepared[spot.piece()] = spot.preparation();
            lying.get(spot.piece()).get(spot.segment()).add(need);
        }
    }

    @Override
    public SearchResult solve(SearchProblem problem, Duration limit, SearchWatch watch) {
        SearchClock clock = new SearchClock(limit, watch);
        State state = new State(problem);
        List<Pair> pairs = new ArrayList<>();
        List<Integer> order = new ArrayList<>(
                IntStream.range(0, problem.lines().size()).boxed().toList());
        order.sort(Comparator.comparingLong(
                (Integer l) -> -longest(problem, problem.lines().get(l))));
        for (int l : order) {
            Line line = problem.lines().get(l);
            for (int i = 0; i < line.quantity() && !clock.over(); i++) {
                Pair pair = fromOneBlank(state, l, line);
                if (pair == null) {
                    pair = fromTwo(state, l, line);
                }
                if (pair == null) {
                    break;
                }
                pairs.add(pair);
            }
        }
        CutPlan plan = plan(state, pairs);
        List<Level> levels = new ArrayList<>();
        for (Measure m : Measure.values()) {
            levels.add(new Level(m, plan.value(m), m == Measure.FILLED ? problem.orderedWeight() : Long.MIN_VALUE));
        }
        return new SearchResult(Status.GAP, levels, plan.layouts(), plan.pairs(), "by hand", clock.seconds());
    }

    private static long longest(SearchProblem problem, Line line) {
        return line.options().stream()
                .mapToLong(o -> problem.needs().get(o.neck()).shortUm()
                        + problem.needs().get(o.head()).shortUm())
                .max()
                .orElse(0);
    }

    private static List<Spot> spots(SearchProblem problem) {
        List<Spot> spots = new ArrayList<>();
        for (int p = 0; p < problem.pieces().size(); p++) {
            List<Preparation> all = problem.pieces().get(p).preparations();
            for (int r = 0; r < all.size(); r++) {
                for (int s = 0; s < all.get(r).segments().size(); s++) {
                    spots.add(new Spot(p, r, s));
                }
            }
        }
        return spots;
    }

    private static @Nullable Pair fromOneBlank(State state, int l, Line line) {
        long least = Long.MAX_VALUE;
        Spot best = null;
        int option = -1;
        for (int o = 0; o < line.options().size(); o++) {
            Option wanted = line.options().get(o);
            for (Spot spot : spots(state.problem)) {
                if (!line.pairing().allows(spot.piece(), spot.piece())) {
                    continue;
                }
                long left = state.left(spot, wanted.neck(), wanted.head());
                if (left >= 0 && left < least) {
                    least = left;
                    best = spot;
                    option = o;
                }
            }
        }
        if (best == null) {
            return null;
        }
        state.lay(best, line.options().get(option).neck());
        state.lay(best, line.options().get(option).head());
        return new Pair(l, option, best.piece(), best.piece());
    }

    private static @Nullable Pair fromTwo(State state, int l, Line line) {
        for (int o = 0; o < line.options().size(); o++) {
            Option wanted = line.options().get(o);
            Spot neck = tightest(state, wanted.neck(), line, -1);
            if (neck == null) {
                continue;
            }
            Spot head = tightest(state, wanted.head(), line, neck.piece());
            if (head != null) {
                state.lay(neck, wanted.neck());
                state.lay(head, wanted.head());
                return new Pair(l, o, neck.piece(), head.piece());
            }
        }
        return null;
    }

    /** The tightest spot for one part; for a head, on another piece that its neck's piece may be paired with. */
    private static @Nullable Spot tightest(State state, int need, Line line, int neckPiece) {
        long least = Long.MAX_VALUE;
        Spot best = null;
        for (Spot spot : spots(state.problem)) {
            boolean allowed = neckPiece < 0
                    ? line.pairing().neckGroup()[spot.piece()] >= 0
                    : spot.piece() != neckPiece && line.pairing().allows(neckPiece, spot.piece());
            if (!allowed) {
                continue;
            }
            long left = state.left(spot, need);
            if (left >= 0 && left < least) {
                least = left;
                best = spot;
            }
        }
        return best;
    }

    private static CutPlan plan(State state, List<Pair> pairs) {
        List<Layout> layouts = new ArrayList<>();
        for (int p = 0; p < state.prepared.length; p++) {
            if (state.prepared[p] < 0) {
                continue;
            }
            List<SegmentUse> uses = new ArrayList<>();
            List<Segment> segments = state.problem
                    .pieces()
                    .get(p)
                    .preparations()
                    .get(state.prepared[p])
                    .segments();
            for (int s = 0; s < segments.size(); s++) {
                uses.add(CutPlan.groups(
                        state.problem, segments.get(s), state.lying.get(p).get(s)));
            }
            layouts.add(new Layout(p, state.prepared[p], uses));
        }
        return CutPlan.of(state.problem, layouts, PlanWriter.ordered(pairs));
    }
}
