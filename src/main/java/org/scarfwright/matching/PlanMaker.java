package org.scarfwright.matching;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.scarfwright.matching.Plan.Books;
import org.scarfwright.matching.Plan.Level;
import org.scarfwright.matching.Plan.Pairing;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.matching.Plan.Unfilled;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.SearchResult;
import org.scarfwright.matching.search.SearchWatch;
import org.scarfwright.web.ConflictException;

/** From a week's question to its plan: builds the search's numbers, runs it and lays out what it found. Reads no database. */
final class PlanMaker {
    private final MatchSearch search;

    PlanMaker(MatchSearch search) {
        this.search = search;
    }

    /**
     * A proposal without an id.
     *
     * @param limit wall time of the search
     * @param watch stops the search, which then keeps the best so far, and is told how it goes
     */
    Plan make(MatchInput input, Instant madeAt, Duration limit, SearchWatch watch) {
        Found found = find(input, List.of(), limit, watch);
        refuseMissingPins(input, found.made(), watch.stopped());
        return found.plan(madeAt);
    }

    /**
     * What the search finds, before it is written out as a plan.
     *
     * @param avoided pairs the search is to leave out although nobody decided so
     */
    Found find(MatchInput input, List<Hand.ForbidPair> avoided, Duration limit, SearchWatch watch) {
        MatchModel model = new MatchModel(input, avoided);
        refuseBrokenPins(input);
        SearchResult result = search.solve(model.problem(), limit, watch);
        PlanAssembly assembly = new PlanAssembly(model, result);
        return new Found(model, result, assembly.layouts(), assembly.made());
    }

    /** An answer of the search. Writing it out says why each piece is taken and what came close, which takes its time. */
    record Found(MatchModel model, SearchResult result, List<PieceLayout> layouts, List<PlanAssembly.Made> made) {

        List<Level> levels() {
            return result.levels().stream().map(l -> level(l, model)).toList();
        }

        /** The same with its necks given to the orders in another way. */
        Found with(List<PlanAssembly.Made> given) {
            return new Found(model, result, layouts, given);
        }

        /** A proposal without an id, proved as far as the search proved it. */
        Plan plan(Instant madeAt) {
            return plan(
                    madeAt, status(result, made.size()), levels(), model.input().asked());
        }

        /** A proposal whose proof is known from elsewhere. */
        Plan plan(Instant madeAt, Plan.Status status, List<Level> levels, Plan.Asked asked) {
            MatchInput input = model.input();
            return new Plan(
                    0,
                    input.week().toString(),
                    Plan.State.PROPOSED,
                    status,
                    madeAt,
                    result.engine(),
                    result.seconds(),
                    made.size(),
                    input.necks(),
                    levels,
                    pairings(model, made, layouts),
                    layouts,
                    unfilled(model, made),
                    layouts.stream().map(PieceLayout::books).reduce(Books.NOTHING, Books::plus),
                    input.hands().stream().map(Hand::words).toList(),
                    asked);
        }
    }

    /** A pin that a rule refuses; the rack or the shop's rules changed since it was noted. */
    private static void refuseBrokenPins(MatchInput input) {
        for (MatchInput.Line line : input.lines()) {
            PinTrial.refusal(line, input).ifPresent(reason -> {
                throw new ConflictException(
                        words(line) + " That cannot hold: " + reason + ". Undo it to match the week.");
            });
        }
    }

    private static void refuseMissingPins(MatchInput input, List<PlanAssembly.Made> made, boolean stopped) {
        Set<Integer> there = made.stream().map(PlanAssembly.Made::line).collect(Collectors.toSet());
        List<String> missing = new ArrayList<>();
        for (int l = 0; l < input.lines().size(); l++) {
            if (input.lines().get(l).pin() != null && !there.contains(l)) {
                missing.add(words(input.lines().get(l)));
            }
        }
        if (!missing.isEmpty()) {
            throw new ConflictException(
                    String.join(" ", missing)
                            + (stopped
                                    ? " The search was stopped before that had its place."
                                    : " That does not find room beside what else is pinned or kept by hand. Undo one of them."));
        }
    }

    private static String words(MatchInput.Line line) {
        return Objects.requireNonNull(line.pin()).words();
    }

    private static Plan.Status status(SearchResult result, int filled) {
        if (result.status() == SearchResult.Status.GAP) {
            return Plan.Status.GAP;
        }
        return filled == 0 ? Plan.Status.INFEASIBLE : Plan.Status.PROVED;
    }

    private static Level level(SearchResult.Level level, MatchModel model) {
        // The search is told that a pinned neck counts more than all others; people are told its priority.
        long pins = level.measure() == SearchResult.Measure.FILLED ? model.weightOfPins() : 0;
        int scale = switch (level.measure()) {
            case FILLED, PIECES, SET_UPS -> 0;
            case BOOK_VALUE -> 2;
            case PLANED -> 3;
        };
        String unit = switch (level.measure()) {
            case FILLED, PIECES, SET_UPS -> "count";
            case BOOK_VALUE -> "money";
            case PLANED -> "cm³";
        };
        return new Level(
                name(level.measure(), model.input()),
                BigDecimal.valueOf(level.value() - pins, scale),
                BigDecimal.valueOf(level.bound() - pins, scale),
                unit);
    }

    /** What a level is called. */
    static String name(SearchResult.Measure measure, MatchInput input) {
        return switch (measure) {
            case FILLED ->
                input.lines().stream().map(MatchInput.Line::priority).distinct().count() > 1
                        ? "necks made, weighted by priority"
                        : "necks made";
            case BOOK_VALUE -> "book value of the wood spent";
            case PIECES -> "pieces cut into";
            case SET_UPS -> "saw set-ups";
            case PLANED -> "wood planed away, under cuts too";
        };
    }

    private static List<Pairing> pairings(MatchModel model, List<PlanAssembly.Made> made, List<PieceLayout> layouts) {
        Reasons reasons = new Reasons(model, layouts, made);
        int[] next = new int[model.input().lines().size()];
        List<Pairing> pairings = new ArrayList<>();
        for (PlanAssembly.Made m : made) {
            MatchInput.Line line = model.input().lines().get(m.line());
            pairings.add(new Pairing(
                    line.order(),
                    line.numbers().get(next[m.line()]++),
                    line.design().code(),
                    m.way().arrangement(),
                    m.way().angle(),
                    m.neck(),
                    m.head(),
                    m.way().neck().wing(m.neck().width()),
                    m.way().joint().seamFromNut(),
                    reasons.of(m)));
        }
        return pairings;
    }

    private static List<Unfilled> unfilled(MatchModel model, List<PlanAssembly.Made> made) {
        NearestMisses misses = new NearestMisses(model, made);
        List<Unfilled> unfilled = new ArrayList<>();
        for (int l = 0; l < model.input().lines().size(); l++) {
            MatchInput.Line line = model.input().lines().get(l);
            int at = l;
            int missing = line.numbers().size()
                    - (int) made.stream().filter(m -> m.line() == at).count();
            if (missing > 0) {
                unfilled.add(misses.of(line, missing));
            }
        }
        return unfilled;
    }
}
