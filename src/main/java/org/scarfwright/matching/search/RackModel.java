package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
 *   <li>A <b>supply</b> is a kind in one group of pieces; a <b>flow</b> is an option of a line made from a neck supply and a
 *       head supply that may be paired. A plan is a choice of layouts and whole flows with, for every supply, as many parts cut
 *       as flows take.
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
     * One segment of a bundle's preparation.
     *
     * @param kinds that fit, those of one angle next to each other
     * @param angle by position in {@code kinds}
     * @param shortUm by position in {@code kinds}
     * @param run by position in {@code kinds}: equal for kinds that may share a bevel; such kinds lie next to each other
     * @param alone by position in {@code kinds}: parts of it share their bevel with no other
     */
    @SuppressWarnings("ArrayRecordComponent") // read in inner loops and never compared
    record Site(
            int index,
            int bundle,
            int prepared,
            int segment,
            Segment rule,
            Preparation preparation,
            int[] kinds,
            int[] angle,
            long[] shortUm,
            int[] run,
            boolean[] alone) {
        long lengthUm() {
            return rule.lengthUm();
        }

        /** What one bevel cut and the square cut of its group take, by position in {@code kinds}. */
        long cutUm(int at) {
            return preparation.bevelUm()[angle[at]] + preparation.squareKerfUm();
        }
    }

    /** One way from supplies to a neck of a line. */
    record Flow(int line, int option, int neckSupply, int headSupply) {}

    final SearchProblem problem;

    final int kinds;
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

    /** By kind, then bundle: the supply a part of the kind from there goes to, or -1. */
    final int[][] supplyOf;

    final int supplies;
    final List<Flow> flows = new ArrayList<>();

    RackModel(SearchProblem problem) {
        this.problem = problem;
        int needs = problem.needs().size();
        int pieces = problem.pieces().size();

        int[][] group = groups();
        boolean[][] live = new boolean[needs][];
        for (int n = 0; n < needs; n++) {
            live[n] = new boolean[highest(group[n]) + 1];
        }
        for (Line line : problem.lines()) {
            for (Option o : line.options()) {
                boolean[][] allowed = allowed(line, o, group);
                for (int g = 0; g < allowed.length; g++) {
                    for (int h = 0; h < allowed[g].length; h++) {
                        if (allowed[g][h]) {
                            live[o.neck()][g] = true;
                            live[o.head()][h] = true;
                        }
                    }
                }
            }
        }

        // Needs into kinds.
        kindOfNeed = new int[needs];
        int[][] canonical = new int[needs][];
        int[][] canonicalId = new int[needs][];
        Map<List<Object>, Integer> kindByKey = new LinkedHashMap<>();
        List<Integer> firstNeed = new ArrayList<>();
        for (int n = 0; n < needs; n++) {
            canonicalId[n] = new int[live[n].length];
            canonical[n] = canonicalGroups(group[n], live[n], canonicalId[n]);
            Need need = problem.needs().get(n);
            List<Object> key = List.of(need.angle(), need.shortUm(), ints(canonical[n]), membership(n, canonical[n]));
            Integer known = kindByKey.get(key);
            if (known == null) {
                known = firstNeed.size();
                kindByKey.put(key, known);
                firstNeed.add(n);
            }
            kindOfNeed[n] = known;
        }
        kinds = firstNeed.size();
        kindAngle = new int[kinds];
        kindShortUm = new long[kinds];
        int[][] kindGroup = new int[kinds][];
        for (int k = 0; k < kinds; k++) {
            Need need = problem.needs().get(firstNeed.get(k));
            kindAngle[k] = need.angle();
            kindShortUm[k] = need.shortUm();
            kindGroup[k] = canonical[firstNeed.get(k)];
        }
        kindLimit = new int[kinds];
        kindRole = new int[kinds];
        roleLimit = limits();

        // Supplies.
        int[][] supplyOfGroup = new int[kinds][];
        int count = 0;
        for (int k = 0; k < kinds; k++) {
            supplyOfGroup[k] = new int[highest(kindGroup[k]) + 1];
            for (int g = 0; g < supplyOfGroup[k].length; g++) {
                supplyOfGroup[k][g] = count++;
            }
        }
        supplies = count;

        // Pieces into bundles.
        Map<List<Object>, List<Integer>> bundleByKey = new LinkedHashMap<>();
        boolean[] samePieceKind = samePieceKinds();
        for (int p = 0; p < pieces; p++) {
            bundleByKey
                    .computeIfAbsent(bundleKey(p, kindGroup, samePieceKind), key -> new ArrayList<>())
                    .add(p);
        }
        supplyOf = new int[kinds][bundleByKey.size()];
        for (List<Integer> alike : bundleByKey.values()) {
            addBundle(List.copyOf(alike), kindGroup, supplyOfGroup);
        }

        // Flows.
        for (int l = 0; l < problem.lines().size(); l++) {
            Line line = problem.lines().get(l);
            for (int i = 0; i < line.options().size(); i++) {
                Option o = line.options().get(i);
                boolean[][] allowed = allowed(line, o, group);
                for (int g = 0; g < allowed.length; g++) {
                    for (int h = 0; h < allowed[g].length; h++) {
                        if (allowed[g][h]) {
                            int neck = supplyOfGroup[kindOfNeed[o.neck()]][canonicalId[o.neck()][g]];
                            int head = supplyOfGroup[kindOfNeed[o.head()]][canonicalId[o.head()][h]];
                            flows.add(new Flow(l, i, neck, head));
                        }
                    }
                }
            }
        }
    }

    /** By piece, the index of its bundle. */
    int[] bundleOfPiece() {
        int[] result = new int[problem.pieces().size()];
        for (Bundle b : bundles) {
            for (int p : b.pieces()) {
                result[p] = b.index();
            }
        }
        return result;
    }

    /** What filling every line that has a flow would count: no plan fills more. */
    long fillableWeight() {
        boolean[] can = new boolean[problem.lines().size()];
        for (Flow f : flows) {
            can[f.line()] = true;
        }
        long sum = 0;
        for (int l = 0; l < can.length; l++) {
            if (can[l]) {
                sum += problem.lines().get(l).weight() * problem.lines().get(l).quantity();
            }
        }
        return sum;
    }

    /**
     * By need, then piece: a number that is equal for pieces the line's pairing treats alike, -1 where the need can never lie.
     * Groups whose rows (or columns) of the compatibility table agree wherever it matters are put together.
     */
    private int[][] groups() {
        int pieces = problem.pieces().size();
        int[][] group = new int[problem.needs().size()][];
        for (int n = 0; n < group.length; n++) {
            Need need = problem.needs().get(n);
            SearchProblem.Pairing pairing = problem.lines().get(need.line()).pairing();
            int[] given = need.role() == SearchProblem.Role.NECK ? pairing.neckGroup() : pairing.headGroup();
            group[n] = new int[pieces];
            for (int p = 0; p < pieces; p++) {
                group[n][p] = !fitsSomewhere(n, p) ? -1 : pairing.samePiece() ? p : given[p];
            }
        }
        for (Line line : problem.lines()) {
            if (!line.pairing().samePiece()) {
                mergeGroups(line, group);
            }
        }
        return group;
    }

    private static void mergeGroups(Line line, int[][] group) {
        boolean[][] table = line.pairing().compatible();
        boolean[] necks = new boolean[table.length];
        boolean[] heads = new boolean[table.length == 0 ? 0 : table[0].length];
        for (Option o : line.options()) {
            mark(group[o.neck()], necks);
            mark(group[o.head()], heads);
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
        boolean[] done = new boolean[group.length];
        for (Option o : line.options()) {
            renumber(group[o.neck()], neckTo, done, o.neck());
            renumber(group[o.head()], headTo, done, o.head());
        }
    }

    private static void mark(int[] groups, boolean[] seen) {
        for (int g : groups) {
            if (g >= 0) {
                seen[g] = true;
            }
        }
    }

    private static void renumber(int[] groups, int[] to, boolean[] done, int need) {
        if (!done[need]) {
            done[need] = true;
            for (int p = 0; p < groups.length; p++) {
                if (groups[p] >= 0) {
                    groups[p] = to[groups[p]];
                }
            }
        }
    }

    /** By neck group, then head group of an option: both have pieces and may be paired. */
    private static boolean[][] allowed(Line line, Option option, int[][] group) {
        boolean[] necks = new boolean[highest(group[option.neck()]) + 1];
        boolean[] heads = new boolean[highest(group[option.head()]) + 1];
        mark(group[option.neck()], necks);
        mark(group[option.head()], heads);
        boolean[][] allowed = new boolean[necks.length][heads.length];
        for (int g = 0; g < necks.length; g++) {
            for (int h = 0; h < heads.length; h++) {
                allowed[g][h] = necks[g]
                        && heads[h]
                        && (line.pairing().samePiece() ? g == h : line.pairing().compatible()[g][h]);
            }
        }
        return allowed;
    }

    private boolean fitsSomewhere(int need, int piece) {
        for (Preparation r : problem.pieces().get(piece).preparations()) {
            for (Segment s : r.segments()) {
                if (fits(need, r, s)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean fits(int need, Preparation r, Segment s) {
        Need part = problem.needs().get(need);
        long bevel = r.bevelUm()[part.angle()];
        return (isAlone(need, s) || Arrays.binarySearch(s.needs(), need) >= 0)
                && bevel >= 0
                && part.shortUm() + bevel <= s.lengthUm();
    }

    private static boolean isAlone(int need, Segment s) {
        return Arrays.binarySearch(s.alone(), need) >= 0;
    }

    /** Groups renumbered by first piece; a group no pair can use is -1. */
    private static int[] canonicalGroups(int[] group, boolean[] live, int[] canonicalId) {
        Arrays.fill(canonicalId, -1);
        int[] result = new int[group.length];
        int next = 0;
        for (int p = 0; p < group.length; p++) {
            if (group[p] < 0 || !live[group[p]]) {
                result[p] = -1;
                continue;
            }
            if (canonicalId[group[p]] < 0) {
                canonicalId[group[p]] = next++;
            }
            result[p] = canonicalId[group[p]];
        }
        return result;
    }

    private List<Integer> membership(int need, int[] canonical) {
        List<Integer> where = new ArrayList<>();
        for (int p = 0; p < canonical.length; p++) {
            if (canonical[p] < 0) {
                continue;
            }
            List<Preparation> preparations = problem.pieces().get(p).preparations();
            for (int r = 0; r < preparations.size(); r++) {
                List<Segment> segments = preparations.get(r).segments();
                for (int s = 0; s < segments.size(); s++) {
                    if (fits(need, preparations.get(r), segments.get(s))) {
                        where.add(p);
                        where.add(r);
                        where.add(isAlone(need, segments.get(s)) ? -1 - s : s);
                    }
                }
            }
        }
        return where;
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
        boolean[][] counted = new boolean[kinds][roles];
        for (int n = 0; n < kindOfNeed.length; n++) {
            Need need = problem.needs().get(n);
            int role = need.line() * 2 + (need.role() == SearchProblem.Role.NECK ? 0 : 1);
            int k = kindOfNeed[n];
            if (!counted[k][role]) {
                counted[k][role] = true;
                kindLimit[k] += problem.lines().get(need.line()).quantity();
            }
            if (roleOfKind[k] < 0) {
                roleOfKind[k] = role;
            } else {
                parent[root(parent, role)] = root(parent, roleOfKind[k]);
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
        for (int n = 0; n < kindOfNeed.length; n++) {
            if (problem.lines().get(problem.needs().get(n).line()).pairing().samePiece()) {
                result[kindOfNeed[n]] = true;
            }
        }
        return result;
    }

    private List<Object> bundleKey(int piece, int[][] kindGroup, boolean[] samePieceKind) {
        List<Object> key = new ArrayList<>();
        StockPiece p = problem.pieces().get(piece);
        key.add(p.valueCents());
        for (int k = 0; k < kinds; k++) {
            key.add(kindGroup[k][piece]);
            if (kindGroup[k][piece] >= 0 && samePieceKind[k]) {
                // Both parts come from this very piece, so no other stands in for it.
                key.add("piece " + piece);
            }
        }
        for (Preparation r : p.preparations()) {
            key.add(List.of(
                    r.squareKerfUm(),
                    longs(r.bevelUm()),
                    ints(r.setUp()),
                    r.planedMm3PerMetre(),
                    r.segments().size()));
            for (Segment s : r.segments()) {
                Runs runs = kindsOn(r, s, piece, kindGroup);
                key.add(List.of(s.lengthUm(), s.rests(), ints(runs.kinds()), ints(runs.run())));
            }
        }
        return key;
    }

    /** Kinds on a segment, those that may share a bevel next to each other, and their runs; a lonely kind's run is below 0. */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    private record Runs(int[] kinds, int[] run) {}

    /** Kinds that fit a segment: by angle, the longer first, and those that share no bevel at the end. */
    private Runs kindsOn(Preparation r, Segment s, int piece, int[][] kindGroup) {
        int[] run = new int[kinds];
        boolean[] on = new boolean[kinds];
        for (int n = 0; n < kindOfNeed.length; n++) {
            int k = kindOfNeed[n];
            if (!on[k] && kindGroup[k][piece] >= 0 && fits(n, r, s)) {
                on[k] = true;
                run[k] = isAlone(n, s) ? -1 : kindAngle[k];
            }
        }
        List<Integer> list = new ArrayList<>();
        for (int k = 0; k < kinds; k++) {
            if (on[k]) {
                list.add(k);
            }
        }
        list.sort(Comparator.comparing((Integer k) -> run[k] < 0)
                .thenComparing(k -> kindAngle[k])
                .thenComparing(k -> -kindShortUm[k])
                .thenComparing(k -> k));
        return new Runs(
                list.stream().mapToInt(Integer::intValue).toArray(),
                list.stream().mapToInt(k -> run[k]).toArray());
    }

    private void addBundle(List<Integer> pieces, int[][] kindGroup, int[][] supplyOfGroup) {
        int b = bundles.size();
        int first = pieces.get(0);
        for (int k = 0; k < kinds; k++) {
            int g = kindGroup[k][first];
            supplyOf[k][b] = g < 0 ? -1 : supplyOfGroup[k][g];
        }
        StockPiece piece = problem.pieces().get(first);
        List<Prepared> usable = new ArrayList<>();
        for (int r = 0; r < piece.preparations().size(); r++) {
            Preparation preparation = piece.preparations().get(r);
            long base = piece.valueCents();
            List<Site> here = new ArrayList<>();
            for (int s = 0; s < preparation.segments().size(); s++) {
                Segment segment = preparation.segments().get(s);
                base -= segment.restCents(segment.lengthUm());
                Runs runs = kindsOn(preparation, segment, first, kindGroup);
                if (runs.kinds().length > 0) {
                    here.add(site(sites.size() + here.size(), b, s, preparation, runs));
                }
            }
            if (!here.isEmpty()) {
                Prepared p = new Prepared(prepared.size(), r, b, base, List.copyOf(here));
                usable.add(p);
                prepared.add(p);
                sites.addAll(here);
            }
        }
        bundles.add(new Bundle(b, pieces, piece.valueCents(), List.copyOf(usable)));
    }

    private Site site(int index, int bundle, int segment, Preparation preparation, Runs runs) {
        int n = runs.kinds().length;
        int[] angle = new int[n];
        long[] shortUm = new long[n];
        int[] run = new int[n];
        boolean[] alone = new boolean[n];
        for (int i = 0; i < n; i++) {
            angle[i] = kindAngle[runs.kinds()[i]];
            shortUm[i] = kindShortUm[runs.kinds()[i]];
            alone[i] = runs.run()[i] < 0;
            run[i] = alone[i] ? -1 - i : runs.run()[i];
        }
        return new Site(
                index,
                bundle,
                prepared.size(),
                segment,
                preparation.segments().get(segment),
                preparation,
                runs.kinds(),
                angle,
                shortUm,
                run,
                alone);
    }

    private static int highest(int[] values) {
        int high = -1;
        for (int v : values) {
            high = Math.max(high, v);
        }
        return high;
    }

    private static List<Integer> ints(int[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    private static List<Long> longs(long[] values) {
        return Arrays.stream(values).boxed().toList();
    }
}
