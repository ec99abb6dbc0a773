package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.LongStream;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;

/**
 * A problem with what cannot be told apart put together, so that the search does not try the same thing twice.
 *
 * <ul>
 *   <li>A <b>kind</b> is a set of needs that lie on the same segments, take the same length and angle, and sort the pieces into
 *       the same groups: which order a part of it goes to is decided after the cutting.
 *   <li>A <b>bundle</b> is a set of pieces of the same value, the same preparations and the same groups.
 *   <li>A <b>supply</b> is a kind in one group of pieces.
 *   <li>A <b>team</b> is a set of lines of the same weight that can be made from the same pairs of supplies; a <b>flow</b> is a
 *       team with one such pair. A plan is a choice of layouts and whole flows with, for every supply, as many parts cut as
 *       flows take.
 * </ul>
 *
 * Source: derived here.
 */
final class RackModel {
    /** Pieces alike; {@code pieces} ascending. */
    record Bundle(int index, List<Integer> pieces, long valueCents, List<Prepared> preparations) {
        int count() {
            return pieces.size();
        }
    }

    /**
     * A preparation with at least one segment something can lie on.
     *
     * @param baseCents book value that leaves when the piece is cut but every segment comes back whole
     * @param sites only segments something can lie on
     */
    record Prepared(int index, int preparation, int bundle, long baseCents, List<Site> sites) {
        /** Only one segment can be used, so cutting the piece and cutting the segment are the same. */
        boolean single() {
            return sites.size() == 1;
        }
    }

    /**
     * The kinds that fit a segment, those of one angle next to each other. Segments that offer the same share one menu.
     *
     * @param index different for each menu
     * @param supply by position in {@code kinds}: where a part of it from here goes
     * @param run by position in {@code kinds}: equal for kinds that may share a bevel; such kinds lie next to each other
     * @param alone by position in {@code kinds}: parts of it share their bevel with no other
     */
    @SuppressWarnings("ArrayRecordComponent") // read in inner loops and never compared
    record Menu(int index, int[] kinds, int[] supply, int[] angle, long[] shortUm, int[] run, boolean[] alone) {
        int size() {
            return kinds.length;
        }
    }

    /**
     * One segment of a bundle's preparation.
     *
     * @param menu the kinds that fit
     */
    record Site(int index, int bundle, int prepared, int segment, Segment rule, Preparation preparation, Menu menu) {
        long lengthUm() {
            return rule.lengthUm();
        }

        /** What one bevel cut and the square cut of its group take, by position in the menu. */
        long cutUm(int at) {
            return preparation.bevelUm()[menu.angle()[at]] + preparation.squareKerfUm();
        }
    }

    /** Lines that cannot be told apart; {@code lines} ascending. */
    record Team(int index, List<Integer> lines, long weight, int quantity) {}

    /** One way from supplies to a neck of a team. */
    record Flow(int team, int neckSupply, int headSupply) {}

    final SearchProblem problem;

    final int kinds;
    /** -1 for a need that is part of no option. */
    final int[] kindOfNeed;

    final int[] kindAngle;
    final long[] kindShortUm;
    /** Most parts of the kind that all lines together can take. */
    final int[] kindLimit;
    /** Index into {@link #roleLimit} by kind. */
    final int[] kindRole;
    /** Most parts of the kinds that share lines and role. */
    final int[] roleLimit;

    final List<Bundle> bundles = new ArrayList<>();
    final List<Prepared> prepared = new ArrayList<>();
    final List<Site> sites = new ArrayList<>();
    final int[] bundleOfPiece;

    final int supplies;
    final int[] kindOfSupply;
    final List<Team> teams = new ArrayList<>();
    final int[] teamOfLine;
    final List<Flow> flows = new ArrayList<>();
    private final Map<Flow, Integer> flowIndex = new HashMap<>();

    /** A list of whole numbers that grows. */
    private static final class IntList {
        private int[] values = new int[8];
        private int size;

        void add(int value) {
            if (size == values.length) {
                values = Arrays.copyOf(values, size * 2);
            }
            values[size++] = value;
        }

        int[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }

    /**
     * Where a part fits and how its pieces are sorted.
     *
     * @param where cells as in {@link Cells#byClass}
     * @param group by position in {@code where}: equal for pieces that the line's pairing treats alike
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    private record Spread(int[] where, int[] group) {
        int groups() {
            return highest(group) + 1;
        }
    }

    RackModel(SearchProblem problem) {
        this.problem = problem;
        int lines = problem.lines().size();
        NeedClasses alike = new NeedClasses(problem);
        Cells cells = new Cells(problem, alike);
        List<int[]> where = cells.byClass();

        // Lines into types: the first of each stands for all.
        int[] typeOfLine = new int[lines];
        Map<List<Object>, Integer> typeByKey = new LinkedHashMap<>();
        IntList firstLine = new IntList();
        for (int l = 0; l < lines; l++) {
            List<Object> key = new ArrayList<>();
            key.add(alike.pairingOfLine[l]);
            for (Option o : problem.lines().get(l).options()) {
                key.add(alike.classOf[o.neck()]);
                key.add(alike.classOf[o.head()]);
            }
            Integer known = typeByKey.putIfAbsent(key, firstLine.size);
            typeOfLine[l] = known == null ? firstLine.size : known;
            if (known == null) {
                firstLine.add(l);
            }
        }
        int[] firstOfType = firstLine.toArray();

        // Their needs into kinds.
        kindOfNeed = new int[problem.needs().size()];
        Arrays.fill(kindOfNeed, -1);
        Map<List<Object>, Integer> kindByKey = new LinkedHashMap<>();
        List<Spread> kindSpread = new ArrayList<>();
        IntList firstNeed = new IntList();
        Map<Integer, Spread> spreads = new HashMap<>();
        Map<Integer, int[]> canonicalIds = new HashMap<>();
        for (int l : firstOfType) {
            Line line = problem.lines().get(l);
            spread(l, alike, cells, where, spreads);
            for (int n : needsOf(line)) {
                int[] canonicalId = new int[spread(spreads, n).groups()];
                Spread canonical = canonical(spread(spreads, n), live(line, n, spreads), canonicalId);
                canonicalIds.put(n, canonicalId);
                Need need = problem.needs().get(n);
                List<Object> key = List.of(
                        need.angle(),
                        need.shortUm(),
                        new Cells.Ints(canonical.where()),
                        new Cells.Ints(canonical.group()));
                Integer known = kindByKey.putIfAbsent(key, firstNeed.size);
                kindOfNeed[n] = known == null ? firstNeed.size : known;
                if (known == null) {
                    firstNeed.add(n);
                    kindSpread.add(canonical);
                }
            }
        }
        for (int l = 0; l < lines; l++) {
            List<Option> own = problem.lines().get(l).options();
            List<Option> first = problem.lines().get(firstOfType[typeOfLine[l]]).options();
            for (int o = 0; o < own.size(); o++) {
                kindOfNeed[own.get(o).neck()] = kindOfNeed[first.get(o).neck()];
                kindOfNeed[own.get(o).head()] = kindOfNeed[first.get(o).head()];
            }
        }
        kinds = firstNeed.size;
        kindAngle = new int[kinds];
        kindShortUm = new long[kinds];
        for (int k = 0; k < kinds; k++) {
            Need need = problem.needs().get(firstNeed.values[k]);
            kindAngle[k] = need.angle();
            kindShortUm[k] = need.shortUm();
        }
        kindLimit = new int[kinds];
        kindRole = new int[kinds];
        roleLimit = limits();

        // Supplies: a kind's are numbered on from the first.
        int[] firstSupply = new int[kinds];
        IntList supplyKinds = new IntList();
        for (int k = 0; k < kinds; k++) {
            firstSupply[k] = supplyKinds.size;
            for (int g = kindSpread.get(k).groups(); g > 0; g--) {
                supplyKinds.add(k);
            }
        }
        supplies = supplyKinds.size;
        kindOfSupply = supplyKinds.toArray();

        bundleOfPiece = new int[problem.pieces().size()];
        bundle(cells, menus(cells, kindSpread, firstSupply));

        // Lines into teams, with their flows.
        List<Set<Flow>> flowsOfType = new ArrayList<>();
        for (int l : firstOfType) {
            Set<Flow> found = new LinkedHashSet<>();
            Line line = problem.lines().get(l);
            for (Option o : line.options()) {
                int[] neckIds = ids(canonicalIds, o.neck());
                int[] headIds = ids(canonicalIds, o.head());
                for (int[] pair : allowed(line, o, spreads)) {
                    int neck = firstSupply[kindOfNeed[o.neck()]] + neckIds[pair[0]];
                    int head = firstSupply[kindOfNeed[o.head()]] + headIds[pair[1]];
                    found.add(new Flow(-1, neck, head));
                }
            }
            flowsOfType.add(found);
        }
        teamOfLine = new int[lines];
        Map<List<Object>, List<Integer>> teamByKey = new LinkedHashMap<>();
        for (int l = 0; l < lines; l++) {
            List<Object> key = List.of(problem.lines().get(l).weight(), flowsOfType.get(typeOfLine[l]));
            teamByKey.computeIfAbsent(key, k -> new ArrayList<>()).add(l);
        }
        for (List<Integer> together : teamByKey.values()) {
            int t = teams.size();
            int quantity = 0;
            for (int l : together) {
                teamOfLine[l] = t;
                quantity += problem.lines().get(l).quantity();
            }
            int first = together.get(0);
            teams.add(new Team(
                    t, List.copyOf(together), problem.lines().get(first).weight(), quantity));
            for (Flow f : flowsOfType.get(typeOfLine[first])) {
                Flow flow = new Flow(t, f.neckSupply(), f.headSupply());
                flowIndex.put(flow, flows.size());
                flows.add(flow);
            }
        }
    }

    /** The flow's position in {@link #flows}. */
    int indexOf(Flow flow) {
        Integer index = flowIndex.get(flow);
        if (index == null) {
            throw new IllegalStateException("A pair of the plan is not a flow of its model: " + flow);
        }
        return index;
    }

    /** The supply that parts of a kind from a bundle go to. */
    int supply(int kind, int bundle) {
        for (Prepared r : bundles.get(bundle).preparations()) {
            for (Site s : r.sites()) {
                for (int i = 0; i < s.menu().size(); i++) {
                    if (s.menu().kinds()[i] == kind) {
                        return s.menu().supply()[i];
                    }
                }
            }
        }
        throw new IllegalStateException("Kind " + kind + " does not lie on bundle " + bundle);
    }

    /** What filling every line that has a flow would count: no plan fills more. */
    long fillableWeight() {
        boolean[] can = new boolean[teams.size()];
        for (Flow f : flows) {
            can[f.team()] = true;
        }
        long sum = 0;
        for (Team t : teams) {
            if (can[t.index()]) {
                sum += t.weight() * t.quantity();
            }
        }
        return sum;
    }

    private static Set<Integer> needsOf(Line line) {
        Set<Integer> needs = new LinkedHashSet<>();
        for (Option o : line.options()) {
            needs.add(o.neck());
            needs.add(o.head());
        }
        return needs;
    }

    private static Spread spread(Map<Integer, Spread> spreads, int need) {
        Spread spread = spreads.get(need);
        if (spread == null) {
            throw new IllegalStateException("Need " + need + " was not looked at");
        }
        return spread;
    }

    /**
     * Sorts the pieces of a line's needs into groups. Groups whose rows (or columns) of the compatibility table agree wherever
     * it matters are put together.
     */
    private void spread(int l, NeedClasses alike, Cells cells, List<int[]> where, Map<Integer, Spread> into) {
        Line line = problem.lines().get(l);
        for (int n : needsOf(line)) {
            boolean neck = problem.needs().get(n).role() == SearchProblem.Role.NECK;
            IntList kept = new IntList();
            IntList group = new IntList();
            for (int at : where.get(alike.classOf[n])) {
                int g = cells.group(at / 2, l, neck);
                if (g >= 0) {
                    kept.add(at);
                    group.add(g);
                }
            }
            into.put(n, new Spread(kept.toArray(), group.toArray()));
        }
        if (!line.pairing().samePiece()) {
            mergeGroups(line, into);
        }
    }

    private static void mergeGroups(Line line, Map<Integer, Spread> spreads) {
        boolean[][] table = line.pairing().compatible();
        boolean[] necks = new boolean[table.length];
        boolean[] heads = new boolean[table.length == 0 ? 0 : table[0].length];
        for (Option o : line.options()) {
            mark(spread(spreads, o.neck()).group(), necks);
            mark(spread(spreads, o.head()).group(), heads);
        }
        Map<List<Integer>, Integer> rows = new HashMap<>();
        int[] neckTo = new int[necks.length];
        for (int g = 0; g < necks.length; g++) {
            List<Integer> partners = new ArrayList<>();
            for (int h = 0; h < heads.length; h++) {
                if (heads[h] && table[g][h]) {
                    partners.add(h);
                }
            }
            // Only groups that have pieces may stand for others: rows agree where pieces are, and nowhere else.
            Integer first = necks[g] ? rows.putIfAbsent(partners, g) : null;
            neckTo[g] = first == null ? g : first;
        }
        Map<List<Integer>, Integer> columns = new HashMap<>();
        int[] headTo = new int[heads.length];
        for (int h = 0; h < heads.length; h++) {
            List<Integer> partners = new ArrayList<>();
            for (int g = 0; g < necks.length; g++) {
                if (necks[g] && table[g][h]) {
                    partners.add(g);
                }
            }
            Integer first = heads[h] ? columns.putIfAbsent(partners, h) : null;
            headTo[h] = first == null ? h : first;
        }
        Set<Integer> done = new LinkedHashSet<>();
        for (Option o : line.options()) {
            renumber(spread(spreads, o.neck()).group(), neckTo, done.add(o.neck()));
            renumber(spread(spreads, o.head()).group(), headTo, done.add(o.head()));
        }
    }

    private static void mark(int[] groups, boolean[] seen) {
        for (int g : groups) {
            seen[g] = true;
        }
    }

    private static void renumber(int[] groups, int[] to, boolean first) {
        for (int i = 0; first && i < groups.length; i++) {
            groups[i] = to[groups[i]];
        }
    }

    /** Neck group and head group of an option, where both have pieces and may be paired. */
    private static List<int[]> allowed(Line line, Option option, Map<Integer, Spread> spreads) {
        Spread neck = spread(spreads, option.neck());
        Spread head = spread(spreads, option.head());
        boolean[] necks = new boolean[neck.groups()];
        boolean[] heads = new boolean[head.groups()];
        mark(neck.group(), necks);
        mark(head.group(), heads);
        List<int[]> allowed = new ArrayList<>();
        for (int g = 0; g < necks.length; g++) {
            if (!necks[g]) {
                continue;
            }
            if (line.pairing().samePiece()) {
                if (g < heads.length && heads[g]) {
                    allowed.add(new int[] {g, g});
                }
                continue;
            }
            for (int h = 0; h < heads.length; h++) {
                if (heads[h] && line.pairing().compatible()[g][h]) {
                    allowed.add(new int[] {g, h});
                }
            }
        }
        return allowed;
    }

    /** By group of a need: some option can use it. */
    private static boolean[] live(Line line, int need, Map<Integer, Spread> spreads) {
        boolean[] live = new boolean[spread(spreads, need).groups()];
        for (Option o : line.options()) {
            if (o.neck() != need && o.head() != need) {
                continue;
            }
            for (int[] pair : allowed(line, o, spreads)) {
                live[o.neck() == need ? pair[0] : pair[1]] = true;
            }
        }
        return live;
    }

    /** Only groups a pair can use, numbered by first piece. */
    private static Spread canonical(Spread spread, boolean[] live, int[] canonicalId) {
        Arrays.fill(canonicalId, -1);
        IntList where = new IntList();
        IntList group = new IntList();
        int next = 0;
        for (int i = 0; i < spread.where().length; i++) {
            int g = spread.group()[i];
            if (live[g]) {
                if (canonicalId[g] < 0) {
                    canonicalId[g] = next++;
                }
                where.add(spread.where()[i]);
                group.add(canonicalId[g]);
            }
        }
        return new Spread(where.toArray(), group.toArray());
    }

    private static int[] ids(Map<Integer, int[]> canonicalIds, int need) {
        int[] ids = canonicalIds.get(need);
        if (ids == null) {
            throw new IllegalStateException("Need " + need + " was not looked at");
        }
        return ids;
    }

    /** Fills {@link #kindLimit} and {@link #kindRole}; lines that share a kind in a role share a limit. */
    private int[] limits() {
        int lines = problem.lines().size();
        int roles = lines * 2;
        int[] parent = new int[roles];
        for (int i = 0; i < roles; i++) {
            parent[i] = i;
        }
        int[] roleOfKind = new int[kinds];
        Arrays.fill(roleOfKind, -1);
        for (int l = 0; l < lines; l++) {
            Set<Integer> counted = new LinkedHashSet<>();
            for (int n : needsOf(problem.lines().get(l))) {
                boolean neck = problem.needs().get(n).role() == SearchProblem.Role.NECK;
                int role = l * 2 + (neck ? 0 : 1);
                int k = kindOfNeed[n];
                if (counted.add(neck ? k : -1 - k)) {
                    kindLimit[k] += problem.lines().get(l).quantity();
                }
                if (roleOfKind[k] < 0) {
                    roleOfKind[k] = role;
                } else {
                    parent[root(parent, role)] = root(parent, roleOfKind[k]);
                }
            }
        }
        int[] limit = new int[roles];
        for (int role = 0; role < roles; role++) {
            limit[root(parent, role)] += problem.lines().get(role / 2).quantity();
        }
        for (int k = 0; k < kinds; k++) {
            kindRole[k] = root(parent, roleOfKind[k]);
        }
        return limit;
    }

    private static int root(int[] parent, int i) {
        int at = i;
        while (parent[at] != at) {
            at = parent[at];
        }
        return at;
    }

    private boolean[] samePieceKinds() {
        boolean[] result = new boolean[kinds];
        for (Line line : problem.lines()) {
            for (int n : needsOf(line)) {
                result[kindOfNeed[n]] |= line.pairing().samePiece();
            }
        }
        return result;
    }

    /** By cell: its menu; cells that offer the same share one. */
    private List<Menu> menus(Cells cells, List<Spread> kindSpread, int[] firstSupply) {
        List<IntList> offered = new ArrayList<>();
        for (int c = cells.count(); c > 0; c--) {
            offered.add(new IntList());
        }
        for (int k = 0; k < kinds; k++) {
            Spread spread = kindSpread.get(k);
            for (int i = 0; i < spread.where().length; i++) {
                IntList here = offered.get(spread.where()[i] / 2);
                here.add(k);
                here.add(spread.where()[i] % 2);
                here.add(firstSupply[k] + spread.group()[i]);
            }
        }
        Map<Cells.Ints, Menu> known = new HashMap<>();
        List<Menu> result = new ArrayList<>();
        for (IntList here : offered) {
            result.add(known.computeIfAbsent(new Cells.Ints(here.toArray()), k -> menu(known.size(), k.values())));
        }
        return result;
    }

    /** Kinds of a cell: by angle, the longer first, and those that share no bevel at the end. */
    private Menu menu(int index, int[] offered) {
        List<int[]> found = new ArrayList<>();
        for (int i = 0; i < offered.length; i += 3) {
            found.add(new int[] {offered[i], offered[i + 1], offered[i + 2]});
        }
        found.sort(Comparator.comparingInt((int[] f) -> f[1])
                .thenComparing(f -> kindAngle[f[0]])
                .thenComparing(f -> -kindShortUm[f[0]])
                .thenComparing(f -> f[0]));
        int n = found.size();
        int[] kind = new int[n];
        int[] supply = new int[n];
        int[] angle = new int[n];
        long[] shortUm = new long[n];
        int[] run = new int[n];
        boolean[] alone = new boolean[n];
        for (int i = 0; i < n; i++) {
            kind[i] = found.get(i)[0];
            supply[i] = found.get(i)[2];
            angle[i] = kindAngle[kind[i]];
            shortUm[i] = kindShortUm[kind[i]];
            alone[i] = found.get(i)[1] == 1;
            run[i] = alone[i] ? -1 - i : angle[i];
        }
        return new Menu(index, kind, supply, angle, shortUm, run, alone);
    }

    private void bundle(Cells cells, List<Menu> menuOfCell) {
        boolean[] samePieceKind = samePieceKinds();
        boolean[] alone = new boolean[menuOfCell.size()];
        for (Menu menu : menuOfCell) {
            for (int k : menu.kinds()) {
                alone[menu.index()] |= samePieceKind[k];
            }
        }
        OnPiece on = new OnPiece(cells, menuOfCell, alone);
        Map<Integer, List<IntList>> byHash = new HashMap<>();
        List<IntList> inOrder = new ArrayList<>();
        for (int p = 0; p < problem.pieces().size(); p++) {
            long[] key = bundleKey(p, on);
            List<IntList> candidates = byHash.computeIfAbsent(Arrays.hashCode(key), h -> new ArrayList<>(1));
            IntList alike = null;
            for (IntList candidate : candidates) {
                if (Arrays.equals(key, bundleKey(candidate.values[0], on))) {
                    alike = candidate;
                }
            }
            if (alike == null) {
                alike = new IntList();
                candidates.add(alike);
                inOrder.add(alike);
            }
            alike.add(p);
        }
        for (IntList alike : inOrder) {
            addBundle(alike.toArray(), on);
        }
    }

    /**
     * What lies on pieces.
     *
     * @param bound by menu: a kind of it wants both parts from one piece
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    private record OnPiece(Cells cells, List<Menu> menuOfCell, boolean[] bound) {
        Menu menu(int piece, int nth) {
            return menuOfCell.get(cells.cellOfSegment[cells.firstSegment[piece] + nth]);
        }
    }

    /** Equal for pieces that stand in for each other. */
    private long[] bundleKey(int piece, OnPiece on) {
        LongStream.Builder key = LongStream.builder();
        StockPiece p = problem.pieces().get(piece);
        key.add(p.valueCents());
        int nth = 0;
        for (Preparation r : p.preparations()) {
            key.add(r.squareKerfUm())
                    .add(r.planedMm3PerMetre())
                    .add(r.segments().size());
            for (int a = 0; a < r.bevelUm().length; a++) {
                key.add(r.bevelUm()[a]).add(r.setUp()[a]);
            }
            for (Segment s : r.segments()) {
                int menu = on.menu(piece, nth++).index();
                // Where both parts come from this very piece, no other stands in for it.
                key.add(menu).add(on.bound()[menu] ? piece : -1);
                key.add(s.lengthUm()).add(s.rests().size());
                for (SearchProblem.RestValue v : s.rests()) {
                    key.add(v.fromUm()).add(v.centsPerKm());
                }
            }
        }
        return key.build().toArray();
    }

    private void addBundle(int[] pieces, OnPiece on) {
        int b = bundles.size();
        for (int p : pieces) {
            bundleOfPiece[p] = b;
        }
        StockPiece piece = problem.pieces().get(pieces[0]);
        List<Prepared> usable = new ArrayList<>(piece.preparations().size());
        int nth = 0;
        for (int r = 0; r < piece.preparations().size(); r++) {
            Preparation preparation = piece.preparations().get(r);
            long base = piece.valueCents();
            List<Site> here = new ArrayList<>(preparation.segments().size());
            for (int s = 0; s < preparation.segments().size(); s++) {
                Segment segment = preparation.segments().get(s);
                base -= segment.restCents(segment.lengthUm());
                Menu menu = on.menu(pieces[0], nth++);
                if (menu.size() > 0) {
                    here.add(new Site(sites.size() + here.size(), b, prepared.size(), s, segment, preparation, menu));
                }
            }
            if (!here.isEmpty()) {
                Prepared p = new Prepared(prepared.size(), r, b, base, List.copyOf(here));
                usable.add(p);
                prepared.add(p);
                sites.addAll(here);
            }
        }
        List<Integer> alike = Arrays.stream(pieces).boxed().toList();
        bundles.add(new Bundle(b, alike, piece.valueCents(), List.copyOf(usable)));
    }

    private static int highest(int[] values) {
        int high = -1;
        for (int v : values) {
            high = Math.max(high, v);
        }
        return high;
    }
}
