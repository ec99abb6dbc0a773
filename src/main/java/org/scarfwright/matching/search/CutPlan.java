package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.matching.search.SearchResult.Group;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Pair;
import org.scarfwright.matching.search.SearchResult.SegmentUse;

/**
 * Layouts and pairs with the values of their levels. Every plan of a search goes through {@link #of}, which checks it in whole
 * numbers against the written rule and counts its levels from the parts themselves, not from what the search believed.
 */
record CutPlan(List<Layout> layouts, List<Pair> pairs, Map<Measure, Long> values) {
    static final CutPlan NOTHING = new CutPlan(List.of(), List.of(), zero());

    /** The better plan comes first. */
    static final Comparator<CutPlan> BETTER = (a, b) -> {
        for (Measure m : Measure.values()) {
            int c = Long.compare(a.value(m), b.value(m));
            if (c != 0) {
                return m == Measure.FILLED ? -c : c;
            }
        }
        return 0;
    };

    CutPlan {
        layouts = List.copyOf(layouts);
        pairs = List.copyOf(pairs);
        values = Map.copyOf(values);
    }

    long value(Measure measure) {
        Long value = values.get(measure);
        return value == null ? 0 : value;
    }

    private static Map<Measure, Long> zero() {
        Map<Measure, Long> values = new EnumMap<>(Measure.class);
        for (Measure m : Measure.values()) {
            values.put(m, 0L);
        }
        return values;
    }

    /**
     * Checks and counts.
     *
     * @throws IllegalStateException when the plan breaks a rule; the sentence says which
     */
    static CutPlan of(SearchProblem problem, List<Layout> layouts, List<Pair> pairs) {
        Count count = new Count(problem);
        for (Layout layout : layouts) {
            count.cut(layout);
        }
        for (Pair pair : pairs) {
            count.pair(pair);
        }
        return new CutPlan(layouts, pairs, count.finish());
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException("The search made a plan that breaks a rule: " + otherwise);
        }
    }

    private static final class Count {
        private final SearchProblem problem;
        /** Parts cut and not yet paired, by need, then piece. */
        private final Map<Long, Integer> spare = new HashMap<>();

        private final int[] made;
        private final boolean[] cut;
        private final Set<Integer> setUps = new HashSet<>();
        private long filled;
        private long cents;
        private long planed;
        private long pieces;

        Count(SearchProblem problem) {
            this.problem = problem;
            made = new int[problem.lines().size()];
            cut = new boolean[problem.pieces().size()];
        }

        void cut(Layout layout) {
            StockPiece piece = problem.pieces().get(layout.piece());
            require(!cut[layout.piece()], "piece " + piece.code() + " is cut twice");
            cut[layout.piece()] = true;
            pieces++;
            Preparation preparation = piece.preparations().get(layout.preparation());
            require(
                    layout.segments().size() == preparation.segments().size(),
                    "piece " + piece.code() + " has another number of segments");
            cents += piece.valueCents();
            boolean some = false;
            for (int s = 0; s < preparation.segments().size(); s++) {
                Segment segment = preparation.segments().get(s);
                SegmentUse use = layout.segments().get(s);
                long used = used(layout.piece(), preparation, segment, use);
                cents -= segment.restCents(segment.restUm(used));
                if (!use.groups().isEmpty()) {
                    some = true;
                    planed += preparation.planedMm3(segment.lengthUm() - segment.restUm(used));
                }
            }
            require(some, "piece " + piece.code() + " is cut for nothing");
        }

        private long used(int piece, Preparation preparation, Segment segment, SegmentUse use) {
            long used = 0;
            for (Group group : use.groups()) {
                require(
                        group.needs().size() == 1 || group.needs().size() == 2,
                        "a group has " + group.needs().size() + " parts");
                int angle = problem.needs().get(group.needs().get(0)).angle();
                for (int n : group.needs()) {
                    Need need = problem.needs().get(n);
                    require(need.angle() == angle, "parts of unequal angle share a bevel");
                    require(
                            contains(segment.needs(), n) || (group.needs().size() == 1 && contains(segment.alone(), n)),
                            "need " + n + " may not lie there");
                    used += need.shortUm();
                    change(n, piece, 1);
                }
                require(preparation.bevelUm()[angle] >= 0, "no saw cuts the bevel");
                setUps.add(preparation.setUp()[angle]);
                used += preparation.bevelUm()[angle] + preparation.squareKerfUm();
            }
            require(
                    use.groups().isEmpty() || used - preparation.squareKerfUm() <= segment.lengthUm(),
                    "parts are longer than their segment");
            return used;
        }

        private int change(int need, int piece, int by) {
            return spare.merge((long) need * problem.pieces().size() + piece, by, Integer::sum);
        }

        void pair(Pair pair) {
            Line line = problem.lines().get(pair.line());
            Option option = line.options().get(pair.option());
            require(problem.needs().get(option.neck()).role() == Role.NECK, "a head is taken for a neck");
            require(problem.needs().get(option.head()).role() == Role.HEAD, "a neck is taken for a head");
            require(line.pairing().allows(pair.neckPiece(), pair.headPiece()), "two pieces may not be paired");
            require(change(option.neck(), pair.neckPiece(), -1) >= 0, "a neck is used twice");
            require(change(option.head(), pair.headPiece(), -1) >= 0, "a head is used twice");
            require(++made[pair.line()] <= line.quantity(), "more is made of " + line.code() + " than was ordered");
            filled += line.weight();
        }

        Map<Measure, Long> finish() {
            for (int left : spare.values()) {
                require(left == 0, "a part belongs to no neck");
            }
            Map<Measure, Long> values = new EnumMap<>(Measure.class);
            values.put(Measure.FILLED, filled);
            values.put(Measure.BOOK_VALUE, cents);
            values.put(Measure.PIECES, pieces);
            values.put(Measure.SET_UPS, (long) setUps.size());
            values.put(Measure.PLANED, planed);
            return values;
        }
    }

    /** Parts of one segment as groups: those of one angle that may share a bevel do so two by two; one may be left over. */
    static SegmentUse groups(SearchProblem problem, Segment segment, List<Integer> needs) {
        List<Integer> ordered = new ArrayList<>(needs);
        ordered.sort(
                Comparator.comparingInt((Integer n) -> problem.needs().get(n).angle())
                        .thenComparing(n -> problem.needs().get(n).shortUm(), Comparator.reverseOrder())
                        .thenComparing(Comparator.naturalOrder()));
        List<Group> groups = new ArrayList<>();
        int waiting = -1;
        for (int n : ordered) {
            if (contains(segment.alone(), n)) {
                groups.add(new Group(List.of(n)));
            } else if (waiting < 0) {
                waiting = n;
            } else if (problem.needs().get(waiting).angle()
                    == problem.needs().get(n).angle()) {
                groups.add(new Group(List.of(waiting, n)));
                waiting = -1;
            } else {
                groups.add(new Group(List.of(waiting)));
                waiting = n;
            }
        }
        if (waiting >= 0) {
            groups.add(new Group(List.of(waiting)));
        }
        return new SegmentUse(groups);
    }

    private static boolean contains(int[] ascending, int wanted) {
        return Arrays.binarySearch(ascending, wanted) >= 0;
    }
}
