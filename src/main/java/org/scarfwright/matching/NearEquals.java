package org.scarfwright.matching;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchWatch;

/**
 * Looks for plans that differ from one there is as much as a stated cost allows, and fill no less.
 *
 * <p>The week is matched again with pairs of the known plans left out: all of them at first, and where that costs too much or
 * fills less, as many of them as the cost allows, found by halving. What is left out of one turn differs from what was left out
 * of the last, so that the plans differ from each other too. Then the same with orders made in their other arrangement. Of all
 * plans within the cost the ones are kept that lie farthest apart.
 *
 * <p>Source: the halving after Junker's search for a preferred set of constraints that can hold together, 2004; taking always the
 * one farthest from those taken after Gonzalez, 1985 (both cited from memory).
 */
final class NearEquals {
    /** So many can be looked at side by side. */
    static final int MOST = 3;

    private static final int TURNS = 8;
    /** One search leaves time for at least two others. */
    private static final int SHARE = 3;

    private static final long LEAST_MILLIS = 500;

    private final PlanMaker maker;
    private final MatchInput input;
    private final Plan origin;
    private final BigDecimal dearest;
    private final SearchWatch watch;
    private final IntConsumer told;
    private final long end;
    private final Set<List<String>> pinned = new HashSet<>();
    private final Map<Tried, Boolean> tried = new HashMap<>();
    private final List<Candidate> found = new ArrayList<>();
    private @Nullable BigDecimal leastBeyond;

    /** What a search was told to leave out, and which orders to make in another arrangement. */
    private record Tried(Set<Hand.ForbidPair> avoided, Set<Hand.Arrange> arranged) {}

    /** A plan within the cost, and how it makes each order. */
    private record Candidate(PlanMaker.Found found, Map<String, List<String>> makings, BigDecimal cost) {}

    /**
     * @param dearest the most book value a plan may spend, in the shop's currency
     */
    NearEquals(PlanMaker maker, MatchInput input, Plan origin, BigDecimal dearest, Watching watching) {
        this.maker = maker;
        this.input = input;
        this.origin = origin;
        this.dearest = dearest;
        this.watch = watching.watch();
        this.told = watching.told();
        this.end = System.nanoTime() + watching.limit().toNanos();
        input.hands().stream()
                .filter(Hand.Pin.class::isInstance)
                .map(Hand.Pin.class::cast)
                .forEach(p -> pinned.add(List.of(p.neck(), p.head())));
    }

    /**
     * Who looks after the search.
     *
     * @param told how many different plans within the cost are known so far
     * @param limit wall time of all of it
     */
    record Watching(SearchWatch watch, IntConsumer told, Duration limit) {}

    /**
     * @param plans proposals without an id, the one that differs most first; at most {@link #MOST}
     * @param leastBeyond when there are none: what the cheapest other plan that was met spends; empty when none was met
     */
    record Answer(List<Plan> plans, @Nullable BigDecimal leastBeyond) {}

    Answer search(Instant madeAt) {
        Random random = new Random(origin.asked().seed());
        byPairs(pairs(origin));
        for (int turn = 0; turn < TURNS && !over(); turn++) {
            Set<Hand.ForbidPair> known = new LinkedHashSet<>(pairs(origin));
            chosen().forEach(c -> known.addAll(pairs(c)));
            List<Hand.ForbidPair> order = new ArrayList<>(known);
            Collections.shuffle(order, random);
            byPairs(order);
        }
        byArrangement(new ArrayList<>(arrangements()), Set.of());
        return new Answer(
                chosen().stream().map(c -> written(c, madeAt)).toList(), found.isEmpty() ? leastBeyond : null);
    }

    private boolean over() {
        return watch.stopped() || System.nanoTime() - end >= 0;
    }

    // ---- leaving out as much as the cost allows
    // ----------------------------------------------------------------------

    private void byPairs(List<Hand.ForbidPair> items) {
        grow(Set.of(), items);
    }

    /** Adds as many of the items as the cost allows to what is left out already. */
    private Set<Hand.ForbidPair> grow(Set<Hand.ForbidPair> base, List<Hand.ForbidPair> items) {
        if (items.isEmpty() || over()) {
            return base;
        }
        Set<Hand.ForbidPair> all = new HashSet<>(base);
        all.addAll(items);
        if (allows(new Tried(all, Set.of()))) {
            return all;
        }
        if (items.size() == 1) {
            return base;
        }
        int half = items.size() / 2;
        return grow(grow(base, items.subList(0, half)), items.subList(half, items.size()));
    }

    private Set<Hand.Arrange> byArrangement(List<Hand.Arrange> items, Set<Hand.Arrange> base) {
        if (items.isEmpty() || over()) {
            return base;
        }
        Set<Hand.Arrange> all = new HashSet<>(base);
        all.addAll(items);
        if (allows(new Tried(Set.of(), all))) {
            return all;
        }
        if (items.size() == 1) {
            return base;
        }
        int half = items.size() / 2;
        return byArrangement(items.subList(half, items.size()), byArrangement(items.subList(0, half), base));
    }

    private boolean allows(Tried question) {
        Boolean known = tried.get(question);
        if (known != null) {
            return known;
        }
        long left = (end - System.nanoTime()) / 1_000_000;
        Duration limit = Duration.ofMillis(Math.max(LEAST_MILLIS, left / SHARE));
        PlanMaker.Found answer = maker.find(
                question.arranged().isEmpty() ? input : arranged(question.arranged()),
                question.avoided().stream()
                        .sorted(Comparator.comparing(Hand.ForbidPair::words))
                        .toList(),
                limit,
                watch);
        boolean within = judge(answer);
        tried.put(question, within);
        return within;
    }

    private boolean judge(PlanMaker.Found answer) {
        List<Plan.Level> levels = answer.levels();
        if (levels.get(0).value().compareTo(origin.levels().get(0).value()) < 0) {
            return false;
        }
        PlanMaker.Found traded = answer.with(Trades.like(origin, answer));
        Candidate candidate =
                new Candidate(traded, makings(traded), levels.get(1).value());
        boolean other = difference(candidate.makings(), makings(origin)) > 0;
        if (candidate.cost().compareTo(dearest) > 0) {
            if (other) {
                leastBeyond = leastBeyond == null ? candidate.cost() : leastBeyond.min(candidate.cost());
            }
            return false;
        }
        if (other && found.stream().noneMatch(c -> c.makings().equals(candidate.makings()))) {
            found.add(candidate);
            told.accept(found.size());
        }
        return true;
    }

    private MatchInput arranged(Set<Hand.Arrange> arranged) {
        ByHand byHand = new ByHand(List.copyOf(arranged));
        return input.with(input.lines().stream()
                .map(l -> new MatchInput.Line(
                        l.order(), byHand.arranged(l.order(), l.design()), l.numbers(), l.priority(), l.pin()))
                .toList());
    }

    /** Pairs of pieces nobody pinned. */
    private List<Hand.ForbidPair> pairs(Plan plan) {
        return plan.pairings().stream()
                .map(p -> new Hand.ForbidPair(p.neck().piece(), p.head().piece()))
                .distinct()
                .filter(p -> !pinned.contains(List.of(p.neck(), p.head())))
                .toList();
    }

    private List<Hand.ForbidPair> pairs(Candidate candidate) {
        return candidate.found().made().stream()
                .map(m ->
                        new Hand.ForbidPair(m.neckPiece().code(), m.headPiece().code()))
                .distinct()
                .filter(p -> !pinned.contains(List.of(p.neck(), p.head())))
                .toList();
    }

    /** For every order the plan makes in one of two arrangements, the other one. */
    private List<Hand.Arrange> arrangements() {
        Map<String, Hand.Arrange> other = new TreeMap<>();
        for (Plan.Pairing p : origin.pairings()) {
            input.line(p.order())
                    .flatMap(l -> l.design().arrangements().stream()
                            .filter(a -> a != p.arrangement())
                            .findFirst())
                    .ifPresent(a -> other.putIfAbsent(p.order(), new Hand.Arrange(p.order(), a, null)));
        }
        return List.copyOf(other.values());
    }

    // ---- which to keep
    // -----------------------------------------------------------------------------------------------

    /** Always the one farthest from the origin and those taken; the cheaper and then the earlier of two that are as far. */
    private List<Candidate> chosen() {
        List<Candidate> taken = new ArrayList<>();
        while (taken.size() < MOST) {
            Candidate best = null;
            int farthest = 0;
            for (Candidate c : found) {
                int apart = difference(c.makings(), makings(origin));
                for (Candidate t : taken) {
                    apart = Math.min(apart, difference(c.makings(), t.makings()));
                }
                boolean cheaper = best != null && apart == farthest && c.cost().compareTo(best.cost()) < 0;
                if (apart > farthest || (apart > 0 && cheaper)) {
                    best = c;
                    farthest = apart;
                }
            }
            if (best == null) {
                break;
            }
            taken.add(best);
        }
        return taken;
    }

    /** Orders that are made otherwise. */
    private static int difference(Map<String, List<String>> a, Map<String, List<String>> b) {
        Set<String> orders = new TreeSet<>(a.keySet());
        orders.addAll(b.keySet());
        return (int) orders.stream()
                .filter(o -> !a.getOrDefault(o, List.of()).equals(b.getOrDefault(o, List.of())))
                .count();
    }

    private static Map<String, List<String>> makings(Plan plan) {
        Map<String, List<String>> makings = new TreeMap<>();
        plan.pairings()
                .forEach(p -> makings.computeIfAbsent(p.order(), k -> new ArrayList<>())
                        .add(String.join(
                                "|",
                                p.arrangement().word(),
                                p.angle().toString(),
                                p.neck().piece(),
                                p.head().piece())));
        makings.values().forEach(Collections::sort);
        return makings;
    }

    private static Map<String, List<String>> makings(PlanMaker.Found found) {
        Map<String, List<String>> makings = new TreeMap<>();
        for (PlanAssembly.Made m : found.made()) {
            makings.computeIfAbsent(found.model().input().lines().get(m.line()).order(), k -> new ArrayList<>())
                    .add(String.join(
                            "|",
                            m.way().arrangement().word(),
                            m.way().angle().toString(),
                            m.neckPiece().code(),
                            m.headPiece().code()));
        }
        makings.values().forEach(Collections::sort);
        return makings;
    }

    // ---- writing it out
    // ----------------------------------------------------------------------------------------------

    private Plan written(Candidate c, Instant madeAt) {
        List<Plan.Level> levels = new ArrayList<>();
        boolean asGood = true;
        boolean proved = true;
        Iterator<Plan.Level> theirs = origin.levels().iterator();
        Iterator<Plan.Level> measured = c.found().levels().iterator();
        for (Measure m : Measure.values()) {
            Plan.Level own = measured.next();
            Plan.Level before = theirs.next();
            BigDecimal bound = asGood ? before.bound() : nothingKnown(m);
            bound = m == Measure.FILLED ? bound.max(own.value()) : bound.min(own.value());
            levels.add(new Plan.Level(own.name(), own.value(), bound, own.unit()));
            proved &= own.value().compareTo(bound) == 0;
            // A bound holds among plans that are as good on the levels before it.
            asGood &= own.value().compareTo(before.value()) == 0;
        }
        Plan.Asked asked = origin.asked().from(new Plan.Origin(Plan.OriginKind.NEAR_EQUAL, origin.id()));
        return c.found().plan(madeAt, proved ? Plan.Status.PROVED : Plan.Status.GAP, levels, asked);
    }

    /** A plan that makes a neck cuts a piece with a saw set up once. */
    private static BigDecimal nothingKnown(Measure m) {
        return m == Measure.PIECES || m == Measure.SET_UPS ? BigDecimal.ONE : BigDecimal.ZERO;
    }
}
