package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Pair;
import org.scarfwright.matching.search.SearchResult.SegmentUse;

/** A plan being made and changed neck by neck, with its levels kept up to date in whole numbers. */
final class Draft {
    /**
     * Somewhere a part can lie.
     *
     * @param alone it shares its bevel with no other part there
     */
    record Place(int piece, int preparation, int segment, boolean alone) {}

    /** A neck with the places of its two parts. */
    record Neck(int line, int option, Place neck, Place head) {}

    private static final long NOWHERE = Long.MAX_VALUE;

    private final SearchProblem problem;
    private final NeedClasses alike;
    /** By class of needs: everywhere they fit alone, in order of pieces. */
    private final List<List<Place>> places = new ArrayList<>();
    /** By piece: the preparation in use, or -1. */
    private final int[] preparation;

    private final int[] partsOnPiece;
    /** By piece and segment: length used. */
    private final long[][] used;
    /** By piece, segment and angle: parts. */
    private final int[][][] byAngle;

    private final int[][] partsOnSegment;
    private final int[] setUpUses;
    private final int[] made;
    private final List<Neck> necks = new ArrayList<>();

    private long filled;
    private long cents;
    private int pieces;
    private int setUps;
    private long planed;

    Draft(SearchProblem problem) {
        this(problem, everything(problem));
    }

    private static BitSet everything(SearchProblem problem) {
        BitSet all = new BitSet();
        all.set(0, problem.pieces().size());
        return all;
    }

    /** @param among pieces that may be cut */
    Draft(SearchProblem problem, BitSet among) {
        this.problem = problem;
        alike = new NeedClasses(problem);
        int n = problem.pieces().size();
        preparation = new int[n];
        partsOnPiece = new int[n];
        used = new long[n][];
        byAngle = new int[n][][];
        partsOnSegment = new int[n][];
        setUpUses = new int[problem.setUps()];
        made = new int[problem.lines().size()];
        for (int i = 0; i < alike.first.length; i++) {
            places.add(new ArrayList<>());
        }
        for (int p = 0; p < n; p++) {
            preparation[p] = -1;
            if (!among.get(p)) {
                used[p] = new long[0];
                continue;
            }
            int most = 0;
            List<Preparation> preparations = problem.pieces().get(p).preparations();
            for (int r = 0; r < preparations.size(); r++) {
                most = Math.max(most, preparations.get(r).segments().size());
                findPlaces(p, r);
            }
            used[p] = new long[most];
            partsOnSegment[p] = new int[most];
            byAngle[p] = new int[most][problem.angles()];
        }
    }

    private void findPlaces(int piece, int r) {
        Preparation prepared = problem.pieces().get(piece).preparations().get(r);
        for (int s = 0; s < prepared.segments().size(); s++) {
            Segment segment = prepared.segments().get(s);
            Place shared = new Place(piece, r, s, false);
            for (int n : segment.needs()) {
                addPlace(n, prepared, segment, shared);
            }
            Place alone = new Place(piece, r, s, true);
            for (int n : segment.alone()) {
                addPlace(n, prepared, segment, alone);
            }
        }
    }

    private void addPlace(int n, Preparation prepared, Segment segment, Place place) {
        int c = alike.classOf[n];
        if (alike.first[c] != n) {
            return;
        }
        Need need = problem.needs().get(n);
        long bevel = prepared.bevelUm()[need.angle()];
        if (bevel >= 0 && need.shortUm() + bevel <= segment.lengthUm()) {
            places.get(c).add(place);
        }
    }

    private List<Place> places(int need) {
        return places.get(alike.classOf[need]);
    }

    List<Neck> necks() {
        return necks;
    }

    int missing(int line) {
        return problem.lines().get(line).quantity() - made[line];
    }

    /** How many places the parts of a line have: few means hard to fill. */
    int choices(int line) {
        int sum = 0;
        for (Option o : problem.lines().get(line).options()) {
            sum += places(o.neck()).size() + places(o.head()).size();
        }
        return sum;
    }

    /** Levels in their order, all wanting to be low. */
    long[] levels() {
        return new long[] {-filled, cents, pieces, setUps, planed};
    }

    void add(Neck neck) {
        Line line = problem.lines().get(neck.line());
        Option option = line.options().get(neck.option());
        put(option.neck(), neck.neck());
        put(option.head(), neck.head());
        made[neck.line()]++;
        filled += line.weight();
        necks.add(neck);
    }

    void remove(int index) {
        Neck neck = necks.remove(index);
        Line line = problem.lines().get(neck.line());
        Option option = line.options().get(neck.option());
        take(option.head(), neck.head());
        take(option.neck(), neck.neck());
        made[neck.line()]--;
        filled -= line.weight();
    }

    /**
     * The cheapest way to make one more of a line as things lie, or nothing.
     *
     * @param overlook asked for every place looked at; true passes it over
     */
    @Nullable
    Neck cheapest(int line, BooleanSupplier overlook) {
        Line wanted = problem.lines().get(line);
        Neck best = null;
        long bestCost = NOWHERE;
        for (int i = 0; i < wanted.options().size(); i++) {
            Option o = wanted.options().get(i);
            if (!wanted.pairing().samePiece()) {
                Place[] necksBy = cheapestByGroup(o.neck(), wanted.pairing().neckGroup(), overlook);
                Place[] headsBy = cheapestByGroup(o.head(), wanted.pairing().headGroup(), overlook);
                for (int g = 0; g < necksBy.length; g++) {
                    for (int h = 0; h < headsBy.length; h++) {
                        Place n = necksBy[g];
                        Place d = headsBy[h];
                        if (n != null
                                && d != null
                                && n.piece() != d.piece()
                                && wanted.pairing().compatible()[g][h]) {
                            long cost = cost(o.neck(), n) + cost(o.head(), d);
                            if (cost < bestCost) {
                                bestCost = cost;
                                best = new Neck(line, i, n, d);
                            }
                        }
                    }
                }
            }
            List<Place> heads = places(o.head());
            int from = 0;
            for (Place n : places(o.neck())) {
                // Both lists are in order of pieces.
                while (from < heads.size() && heads.get(from).piece() < n.piece()) {
                    from++;
                }
                if (from == heads.size()) {
                    break;
                }
                if (heads.get(from).piece() != n.piece()) {
                    continue;
                }
                if (!wanted.pairing().allows(n.piece(), n.piece())
                        || cost(o.neck(), n) == NOWHERE
                        || overlook.getAsBoolean()) {
                    continue;
                }
                long first = cost(o.neck(), n);
                if (first >= bestCost) {
                    continue; // the head costs something too
                }
                put(o.neck(), n);
                for (int at = from; at < heads.size() && heads.get(at).piece() == n.piece(); at++) {
                    Place d = heads.get(at);
                    long second = cost(o.head(), d);
                    if (second != NOWHERE && first + second < bestCost) {
                        bestCost = first + second;
                        best = new Neck(line, i, n, d);
                    }
                }
                take(o.neck(), n);
            }
        }
        return best;
    }

    private @Nullable Place[] cheapestByGroup(int need, int[] group, BooleanSupplier overlook) {
        int groups = 0;
        for (int g : group) {
            groups = Math.max(groups, g + 1);
        }
        @Nullable Place[] best = new @Nullable Place[groups];
        long[] bestCost = new long[groups];
        for (Place place : places(need)) {
            int g = group[place.piece()];
            if (g < 0 || overlook.getAsBoolean()) {
                continue;
            }
            long cost = cost(need, place);
            if (cost != NOWHERE && (best[g] == null || cost < bestCost[g])) {
                best[g] = place;
                bestCost[g] = cost;
            }
        }
        return best;
    }

    /**
     * What one more part costs there: hundredths first, then pieces, set-ups and wood planed, in one number for comparing.
     * {@link #NOWHERE} when it does not fit.
     */
    private long cost(int need, Place place) {
        int p = place.piece();
        if (preparation[p] >= 0 && preparation[p] != place.preparation()) {
            return NOWHERE;
        }
        StockPiece piece = problem.pieces().get(p);
        Preparation prepared = piece.preparations().get(place.preparation());
        Segment segment = prepared.segments().get(place.segment());
        Need part = problem.needs().get(need);
        long before = used[p][place.segment()];
        long after = before + taken(prepared, part, place.alone() ? 0 : byAngle[p][place.segment()][part.angle()]);
        if (after - prepared.squareKerfUm() > segment.lengthUm()) {
            return NOWHERE;
        }
        long moreCents = segment.restCents(segment.restUm(before)) - segment.restCents(segment.restUm(after));
        if (preparation[p] < 0) {
            moreCents += piece.valueCents() - whole(prepared);
        }
        long morePieces = preparation[p] < 0 ? 1 : 0;
        long moreSetUps = setUpUses[prepared.setUp()[part.angle()]] == 0 ? 1 : 0;
        long morePlaned = prepared.planedMm3(segment.restUm(before) - segment.restUm(after));
        return ((moreCents * 4 + morePieces) * 4 + moreSetUps) * (1L << 24) + Math.min(morePlaned, (1L << 24) - 1);
    }

    private static long whole(Preparation prepared) {
        long sum = 0;
        for (Segment s : prepared.segments()) {
            sum += s.restCents(s.lengthUm());
        }
        return sum;
    }

    /** Length one more part takes where so many of its angle, which share bevels, already lie. */
    private static long taken(Preparation prepared, Need part, int already) {
        return part.shortUm() + (already % 2 == 0 ? prepared.bevelUm()[part.angle()] + prepared.squareKerfUm() : 0);
    }

    private void put(int need, Place place) {
        int p = place.piece();
        int s = place.segment();
        StockPiece piece = problem.pieces().get(p);
        Preparation prepared = piece.preparations().get(place.preparation());
        Need part = problem.needs().get(need);
        if (partsOnPiece[p]++ == 0) {
            preparation[p] = place.preparation();
            pieces++;
            cents += piece.valueCents() - whole(prepared);
        }
        long after = used[p][s] + taken(prepared, part, place.alone() ? 0 : byAngle[p][s][part.angle()]++);
        partsOnSegment[p][s]++;
        use(p, s, after);
        if (setUpUses[prepared.setUp()[part.angle()]]++ == 0) {
            setUps++;
        }
    }

    private void take(int need, Place place) {
        int p = place.piece();
        int s = place.segment();
        StockPiece piece = problem.pieces().get(p);
        Preparation prepared = piece.preparations().get(place.preparation());
        Need part = problem.needs().get(need);
        long after = used[p][s] - taken(prepared, part, place.alone() ? 0 : --byAngle[p][s][part.angle()]);
        partsOnSegment[p][s]--;
        use(p, s, after);
        if (--setUpUses[prepared.setUp()[part.angle()]] == 0) {
            setUps--;
        }
        if (--partsOnPiece[p] == 0) {
            cents -= piece.valueCents() - whole(prepared);
            pieces--;
            preparation[p] = -1;
        }
    }

    /** Sets the length used on a segment and what follows from it. */
    private void use(int p, int s, long after) {
        Preparation prepared = problem.pieces().get(p).preparations().get(preparation[p]);
        Segment segment = prepared.segments().get(s);
        long restBefore = segment.restUm(used[p][s]);
        long restAfter = segment.restUm(after);
        cents += segment.restCents(restBefore) - segment.restCents(restAfter);
        planed += prepared.planedMm3(segment.lengthUm() - restAfter)
                - prepared.planedMm3(segment.lengthUm() - restBefore);
        used[p][s] = after;
    }

    /** The plan as it stands, checked. */
    CutPlan plan() {
        List<Pair> pairs = new ArrayList<>();
        List<List<List<Integer>>> parts = new ArrayList<>();
        for (int p = 0; p < preparation.length; p++) {
            List<List<Integer>> segments = new ArrayList<>();
            for (int s = 0; s < used[p].length; s++) {
                segments.add(new ArrayList<>());
            }
            parts.add(segments);
        }
        for (Neck neck : necks) {
            Option o = problem.lines().get(neck.line()).options().get(neck.option());
            pairs.add(new Pair(
                    neck.line(), neck.option(), neck.neck().piece(), neck.head().piece()));
            parts.get(neck.neck().piece()).get(neck.neck().segment()).add(o.neck());
            parts.get(neck.head().piece()).get(neck.head().segment()).add(o.head());
        }
        List<Layout> layouts = new ArrayList<>();
        for (int p = 0; p < preparation.length; p++) {
            if (preparation[p] < 0) {
                continue;
            }
            List<Segment> segments =
                    problem.pieces().get(p).preparations().get(preparation[p]).segments();
            List<SegmentUse> uses = new ArrayList<>();
            for (int s = 0; s < segments.size(); s++) {
                uses.add(CutPlan.groups(problem, segments.get(s), parts.get(p).get(s)));
            }
            layouts.add(new Layout(p, preparation[p], uses));
        }
        return CutPlan.of(problem, layouts, PlanWriter.ordered(pairs));
    }
}
