package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.RackModel.Prepared;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Pairing;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.matching.search.SearchResult.Group;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Pair;
import org.scarfwright.matching.search.SearchResult.SegmentUse;

/**
 * Makes a plan of a large rack better by taking a few necks that want similar wood out of it, and cutting them anew in the best
 * way there is from the pieces this sets free and the pieces that prices recommend for them: a small rack of its own, solved as
 * one. The necks on the pieces that cost most above their prices come first. Always the same for the same plan and prices.
 *
 * <p>Source: large neighbourhood search after Shaw, 1998 (cited from memory).
 */
final class Recutting {
    private static final long SEED = 30_011L;
    private static final int NECKS = 8;
    private static final int PIECES = 80;
    /** Pieces recommended for one part by itself. */
    private static final int LONE = 4;

    private static final int RECOMMENDED = 30_000;
    private static final int ROUNDS = 60;
    private static final int COLUMNS = 2_000;
    private static final long NODES = 300;

    private final RackModel model;
    private final SearchProblem problem;
    private final LinearSolver solver;
    private final Prices prices;
    private final Random random = new Random(SEED);
    /** Layouts worth looking at, cheapest first. */
    private final List<SiteLayout> recommended;
    /** By bundle: kinds that lie there. */
    private final List<BitSet> kindsOn = new ArrayList<>();

    /**
     * With the layouts that can be in a plan not dearer than the gap; in a narrower gap where these are too many.
     *
     * @param pricing has reckoned at these prices
     * @param besides layouts to recommend whatever they cost
     */
    static Recutting within(
            PriceBound pricing, long gap, LinearSolver solver, Prices prices, Collection<SiteLayout> besides) {
        long width = gap;
        Optional<List<SiteLayout>> near = pricing.within(width, RECOMMENDED);
        while (near.isEmpty() && width > 0) {
            width = width * 2 / 3;
            near = pricing.within(width, RECOMMENDED);
        }
        List<SiteLayout> layouts = new ArrayList<>(near.orElse(List.of()));
        layouts.addAll(besides);
        return new Recutting(pricing.model(), solver, prices, layouts);
    }

    /** With the layouts given, which is for racks too large to list all that are near. */
    Recutting(RackModel model, LinearSolver solver, Prices prices, Collection<SiteLayout> layouts) {
        this.model = model;
        this.problem = model.problem;
        this.solver = solver;
        this.prices = prices;
        for (RackModel.Bundle b : model.bundles) {
            BitSet kinds = new BitSet();
            for (Prepared r : b.preparations()) {
                for (Site s : r.sites()) {
                    for (int k : s.menu().kinds()) {
                        kinds.set(k);
                    }
                }
            }
            kindsOn.add(kinds);
        }
        Set<SiteLayout> all = new LinkedHashSet<>(layouts);
        all.addAll(new Sellers(model).lone(LONE));
        recommended = new ArrayList<>(all);
        IdentityHashMap<SiteLayout, Long> cost = new IdentityHashMap<>();
        recommended.forEach(x -> cost.put(x, reduced(x)));
        recommended.sort(Comparator.comparingLong(cost::get));
    }

    private long reduced(SiteLayout x) {
        Prepared r = model.prepared.get(x.site.prepared());
        long sum = prices.cent() * (x.lossCents + r.baseCents());
        for (int i = 0; i < x.at.length; i++) {
            sum -= x.count[i] * prices.supply()[x.supply(i)];
        }
        return sum;
    }

    /** Goes over the plan until time is over, or nothing was gained on so many goes or on a whole round. */
    void improve(Incumbent best, SearchClock clock, int patience) {
        int idle = 0;
        boolean gained = false;
        Set<Integer> tried = new HashSet<>();
        while (idle < patience && !best.plan().layouts().isEmpty() && !clock.over()) {
            CutPlan before = best.plan();
            List<Layout> order = worstFirst(before);
            Layout seed = null;
            for (Layout x : order) {
                if (seed == null && tried.add(x.piece())) {
                    seed = x;
                }
            }
            if (seed == null) {
                if (!gained) {
                    return;
                }
                tried.clear();
                gained = false;
                continue;
            }
            Set<Integer> pairs = neighbours(before, seed.piece());
            pairs.forEach(i -> tried.add(before.pairs().get(i).neckPiece()));
            CutPlan after = recut(before, pairs, clock);
            best.offer(after);
            idle = CutPlan.BETTER.compare(after, before) < 0 ? 0 : idle + 1;
            gained |= idle == 0;
        }
    }

    private List<Layout> worstFirst(CutPlan plan) {
        IdentityHashMap<Layout, Long> cost = new IdentityHashMap<>();
        for (Layout x : plan.layouts()) {
            cost.put(x, cost(x));
        }
        List<Layout> order = new ArrayList<>(plan.layouts());
        order.sort(Comparator.comparingLong((Layout x) -> -cost.getOrDefault(x, 0L))
                .thenComparingInt(Layout::piece));
        return order;
    }

    private long cost(Layout x) {
        StockPiece piece = problem.pieces().get(x.piece());
        Preparation r = piece.preparations().get(x.preparation());
        long cents = piece.valueCents();
        long worth = 0;
        for (int s = 0; s < x.segments().size(); s++) {
            Segment segment = r.segments().get(s);
            long used = 0;
            for (Group g : x.segments().get(s).groups()) {
                for (int n : g.needs()) {
                    used += problem.needs().get(n).shortUm();
                    worth += prices.supply()[model.supply(model.kindOfNeed[n], model.bundleOfPiece[x.piece()])];
                }
                used += r.bevelUm()[problem.needs().get(g.needs().get(0)).angle()] + r.squareKerfUm();
            }
            cents -= segment.restCents(segment.restUm(used));
        }
        return prices.cent() * cents - worth;
    }

    /** Pairs on a piece, those that share pieces with them, and others that want similar wood: any, or those that cost most. */
    private Set<Integer> neighbours(CutPlan plan, int piece) {
        Map<Integer, List<Integer>> onPiece = new HashMap<>();
        for (int i = 0; i < plan.pairs().size(); i++) {
            Pair p = plan.pairs().get(i);
            onPiece.computeIfAbsent(p.neckPiece(), k -> new ArrayList<>()).add(i);
            if (p.headPiece() != p.neckPiece()) {
                onPiece.computeIfAbsent(p.headPiece(), k -> new ArrayList<>()).add(i);
            }
        }
        Set<Integer> taken = new LinkedHashSet<>();
        List<Integer> open = new ArrayList<>(List.of(piece));
        List<Integer> others = new ArrayList<>(onPiece.keySet());
        Collections.sort(others);
        Collections.shuffle(others, random);
        if (random.nextBoolean()) {
            // One piece less needs what several waste: a few of the worst are put together, beside chance.
            Set<Integer> first = new LinkedHashSet<>(
                    someOf(worstFirst(plan).stream().map(Layout::piece).limit(2L * NECKS)));
            first.addAll(others);
            others = List.copyOf(first);
        }
        Set<Integer> seen = new HashSet<>(open);
        int next = 0;
        BitSet kinds = new BitSet();
        while (taken.size() < NECKS || (!open.isEmpty() && taken.size() < 2 * NECKS)) {
            if (open.isEmpty()) {
                while (next < others.size()
                        && (seen.contains(others.get(next))
                                || !kindsOn.get(model.bundleOfPiece[others.get(next)])
                                        .intersects(kinds))) {
                    next++;
                }
                if (next == others.size()) {
                    return taken;
                }
                open.add(others.get(next));
                seen.add(others.get(next));
            }
            for (int i : onPiece.getOrDefault(open.remove(0), List.of())) {
                if (taken.add(i)) {
                    Pair p = plan.pairs().get(i);
                    for (Option o : problem.lines().get(p.line()).options()) {
                        if (kinds.isEmpty() || taken.size() < 3) {
                            kinds.set(Math.max(0, model.kindOfNeed[o.neck()]));
                            kinds.set(Math.max(0, model.kindOfNeed[o.head()]));
                        }
                    }
                    for (int q : new int[] {p.neckPiece(), p.headPiece()}) {
                        if (seen.add(q)) {
                            open.add(q);
                        }
                    }
                }
            }
        }
        return taken;
    }

    private List<Integer> someOf(Stream<Integer> pieces) {
        List<Integer> shuffled = pieces.collect(Collectors.toCollection(ArrayList::new));
        Collections.shuffle(shuffled, random);
        return shuffled.subList(0, Math.min(NECKS, shuffled.size()));
    }

    private CutPlan recut(CutPlan plan, Set<Integer> out, SearchClock clock) {
        List<Pair> kept = new ArrayList<>();
        Map<Integer, Integer> wanted = new LinkedHashMap<>();
        int[] made = new int[problem.lines().size()];
        Set<Integer> free = new TreeSet<>();
        for (int i = 0; i < plan.pairs().size(); i++) {
            Pair p = plan.pairs().get(i);
            made[p.line()]++;
            if (out.contains(i)) {
                wanted.merge(p.line(), 1, Integer::sum);
                free.add(p.neckPiece());
                free.add(p.headPiece());
            } else {
                kept.add(p);
            }
        }
        for (int l = 0; l < made.length; l++) {
            int missing = problem.lines().get(l).quantity() - made[l];
            if (missing > 0 && wanted.size() < 2 * NECKS) {
                wanted.merge(l, missing, Integer::sum);
            }
        }
        kept.forEach(p -> {
            free.remove(p.neckPiece());
            free.remove(p.headPiece());
        });
        Set<Integer> used = new HashSet<>();
        plan.layouts().forEach(x -> used.add(x.piece()));
        used.removeAll(free);
        Part part = part(wanted, free, used);
        part = new Part(part.problem(), part.lines(), part.pieces(), part.needs(), now(part, plan, out));
        CutPlan found = solve(part, clock);
        return merged(plan, kept, part, found);
    }

    /** A small problem cut out of the large one. */
    private record Part(
            SearchProblem problem,
            List<Integer> lines,
            List<Integer> pieces,
            List<Integer> needs,
            @Nullable CutPlan now) {}

    /** What is taken out, as a plan of the small problem; nothing when it shares a piece with what stays. */
    private @Nullable CutPlan now(Part part, CutPlan plan, Set<Integer> out) {
        List<Pair> pairs = new ArrayList<>();
        Set<Integer> touched = new HashSet<>();
        for (int i : out) {
            Pair p = plan.pairs().get(i);
            int neck = part.pieces().indexOf(p.neckPiece());
            int head = part.pieces().indexOf(p.headPiece());
            if (neck < 0 || head < 0) {
                return null;
            }
            touched.add(p.neckPiece());
            touched.add(p.headPiece());
            pairs.add(new Pair(part.lines().indexOf(p.line()), p.option(), neck, head));
        }
        List<Layout> layouts = new ArrayList<>();
        for (Layout x : plan.layouts()) {
            if (touched.contains(x.piece())) {
                layouts.add(new Layout(
                        part.pieces().indexOf(x.piece()),
                        x.preparation(),
                        x.segments().stream()
                                .map(u -> new SegmentUse(u.groups().stream()
                                        .map(g -> new Group(g.needs().stream()
                                                .map(part.needs()::indexOf)
                                                .toList()))
                                        .toList()))
                                .toList()));
            }
        }
        return CutPlan.of(part.problem(), layouts, pairs);
    }

    private Part part(Map<Integer, Integer> wanted, Set<Integer> free, Set<Integer> used) {
        BitSet kinds = new BitSet();
        List<Integer> lines = new ArrayList<>(new TreeSet<>(wanted.keySet()));
        List<Integer> needs = new ArrayList<>();
        Map<Integer, Integer> needTo = new HashMap<>();
        for (int l : lines) {
            for (Option o : problem.lines().get(l).options()) {
                for (int n : new int[] {o.neck(), o.head()}) {
                    if (model.kindOfNeed[n] >= 0) {
                        kinds.set(model.kindOfNeed[n]);
                    }
                    if (needTo.putIfAbsent(n, needs.size()) == null) {
                        needs.add(n);
                    }
                }
            }
        }
        Set<Integer> chosen = new TreeSet<>(free);
        for (int i = 0; i < recommended.size() && chosen.size() < PIECES + free.size(); i++) {
            SiteLayout x = recommended.get(i);
            boolean fits = true;
            for (int j = 0; j < x.at.length; j++) {
                fits &= kinds.get(x.kind(j));
            }
            if (fits) {
                List<Integer> alike = model.bundles.get(x.site.bundle()).pieces();
                for (int p : alike) {
                    if (!used.contains(p) && chosen.add(p)) {
                        break;
                    }
                }
            }
        }
        List<Integer> pieces = new ArrayList<>(chosen);
        IdentityHashMap<Pairing, Pairing> pairings = new IdentityHashMap<>();
        List<Line> toldLines = new ArrayList<>();
        for (int l : lines) {
            Line line = problem.lines().get(l);
            List<Option> options = new ArrayList<>();
            for (Option o : line.options()) {
                options.add(new Option(needTo.getOrDefault(o.neck(), -1), needTo.getOrDefault(o.head(), -1)));
            }
            toldLines.add(new Line(
                    line.code(),
                    wanted.getOrDefault(l, 0),
                    line.weight(),
                    options,
                    pairings.computeIfAbsent(line.pairing(), p -> picked(p, pieces))));
        }
        List<Need> toldNeeds = new ArrayList<>();
        for (int n : needs) {
            Need need = problem.needs().get(n);
            toldNeeds.add(new Need(lines.indexOf(need.line()), need.role(), need.angle(), need.shortUm()));
        }
        List<StockPiece> toldPieces = new ArrayList<>();
        for (int p : pieces) {
            StockPiece piece = problem.pieces().get(p);
            List<Preparation> ways = new ArrayList<>();
            for (Preparation r : piece.preparations()) {
                List<Segment> segments = new ArrayList<>();
                for (Segment s : r.segments()) {
                    segments.add(
                            new Segment(s.lengthUm(), told(s.needs(), needTo), s.rests(), told(s.alone(), needTo)));
                }
                ways.add(new Preparation(
                        r.label(),
                        r.sawnUm(),
                        r.squareKerfUm(),
                        r.bevelUm(),
                        r.setUp(),
                        r.planedMm3PerMetre(),
                        segments));
            }
            toldPieces.add(new StockPiece(piece.code(), piece.valueCents(), ways));
        }
        return new Part(
                new SearchProblem(toldLines, toldNeeds, toldPieces, problem.angles(), problem.setUps()),
                lines,
                pieces,
                needs,
                null);
    }

    private static Pairing picked(Pairing p, List<Integer> pieces) {
        return new Pairing(
                pieces.stream().mapToInt(i -> p.neckGroup()[i]).toArray(),
                pieces.stream().mapToInt(i -> p.headGroup()[i]).toArray(),
                p.compatible(),
                p.samePiece());
    }

    private static int[] told(int[] needs, Map<Integer, Integer> to) {
        int[] result = new int[needs.length];
        int size = 0;
        for (int n : needs) {
            Integer t = to.get(n);
            if (t != null) {
                result[size++] = t;
            }
        }
        result = Arrays.copyOf(result, size);
        Arrays.sort(result);
        return result;
    }

    private CutPlan solve(Part part, SearchClock clock) {
        Incumbent best = new Incumbent(clock.silent());
        if (part.now() == null) {
            Improver improver = new Improver(part.problem());
            improver.fill(clock);
            improver.improve(ROUNDS, clock);
            best.offer(improver.plan());
        } else {
            best.offer(part.now());
        }
        Map<Measure, Long> held = new EnumMap<>(Measure.class);
        held.put(Measure.FILLED, best.plan().value(Measure.FILLED));
        RackModel small = new RackModel(part.problem());
        new ColumnSearch(small, solver, clock.silent(), Measure.BOOK_VALUE, held, best, COLUMNS)
                .glance(prices(small, part), NODES);
        return best.plan();
    }

    /** The prices of the large rack for the supplies of the small one. */
    private Prices prices(RackModel small, Part part) {
        int[] needOfKind = new int[small.kinds];
        for (int n = 0; n < small.kindOfNeed.length; n++) {
            if (small.kindOfNeed[n] >= 0) {
                needOfKind[small.kindOfNeed[n]] = part.needs().get(n);
            }
        }
        long[] supply = new long[small.supplies];
        for (Site s : small.sites) {
            int piece = part.pieces().get(small.bundles.get(s.bundle()).pieces().get(0));
            for (int i = 0; i < s.menu().size(); i++) {
                int kind = model.kindOfNeed[needOfKind[s.menu().kinds()[i]]];
                supply[s.menu().supply()[i]] = prices.supply()[model.supply(kind, model.bundleOfPiece[piece])];
            }
        }
        return new Prices(prices.level(), supply, prices.filled());
    }

    private CutPlan merged(CutPlan plan, List<Pair> kept, Part part, CutPlan found) {
        Set<Integer> stays = new HashSet<>();
        Map<Long, Integer> parts = new HashMap<>();
        for (Pair p : kept) {
            stays.add(p.neckPiece());
            stays.add(p.headPiece());
            Option o = problem.lines().get(p.line()).options().get(p.option());
            parts.merge(o.neck() * (long) problem.pieces().size() + p.neckPiece(), 1, Integer::sum);
            parts.merge(o.head() * (long) problem.pieces().size() + p.headPiece(), 1, Integer::sum);
        }
        List<Layout> layouts = new ArrayList<>();
        for (Layout x : plan.layouts()) {
            if (stays.contains(x.piece())) {
                layouts.add(reduced(x, parts));
            }
        }
        for (Layout x : found.layouts()) {
            List<SegmentUse> uses = new ArrayList<>();
            for (SegmentUse use : x.segments()) {
                uses.add(new SegmentUse(use.groups().stream()
                        .map(g -> new Group(
                                g.needs().stream().map(part.needs()::get).toList()))
                        .toList()));
            }
            layouts.add(new Layout(part.pieces().get(x.piece()), x.preparation(), uses));
        }
        layouts.sort(Comparator.comparingInt(Layout::piece));
        List<Pair> pairs = new ArrayList<>(kept);
        for (Pair p : found.pairs()) {
            pairs.add(new Pair(
                    part.lines().get(p.line()),
                    p.option(),
                    part.pieces().get(p.neckPiece()),
                    part.pieces().get(p.headPiece())));
        }
        return CutPlan.of(problem, layouts, PlanWriter.ordered(pairs));
    }

    /** A layout of a piece that stays, without the parts that were taken out. */
    private Layout reduced(Layout x, Map<Long, Integer> parts) {
        List<Segment> segments = problem.pieces()
                .get(x.piece())
                .preparations()
                .get(x.preparation())
                .segments();
        List<SegmentUse> uses = new ArrayList<>();
        for (int s = 0; s < segments.size(); s++) {
            List<Integer> here = new ArrayList<>();
            for (Group g : x.segments().get(s).groups()) {
                for (int n : g.needs()) {
                    long key = n * (long) problem.pieces().size() + x.piece();
                    int there = parts.getOrDefault(key, 0);
                    if (there > 0) {
                        parts.put(key, there - 1);
                        here.add(n);
                    }
                }
            }
            uses.add(CutPlan.groups(problem, segments.get(s), here));
        }
        return new Layout(x.piece(), x.preparation(), uses);
    }
}
