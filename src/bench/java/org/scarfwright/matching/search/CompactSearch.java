package org.scarfwright.matching.search;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.RackModel.Bundle;
import org.scarfwright.matching.search.RackModel.Flow;
import org.scarfwright.matching.search.RackModel.Menu;
import org.scarfwright.matching.search.RackModel.Prepared;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Status;

/**
 * The whole question as one program of CP-SAT, to compare with: how many parts of each kind lie on each stretch of each piece,
 * under which preparation, and what its rest is worth. Necks filled first, then the book value; the levels after these are
 * taken as they come. One worker, so that processor time can be compared.
 */
final class CompactSearch implements MatchSearch {
    private static final long CENTS_SCALE = 1_000_000_000L;
    private static final long EVERY_MILLIS = 50;

    /**
     * One piece under one preparation.
     *
     * @param count by segment, then position in its menu
     */
    private record Cut(Prepared prepared, BoolVar used, List<List<IntVar>> count) {}

    private static final class Compact {
        final RackModel rack;
        final CpModel cp = new CpModel();
        final List<Cut> cuts = new ArrayList<>();
        final List<IntVar> flows = new ArrayList<>();
        final LinearExprBuilder cents = LinearExpr.newBuilder();
        final LinearExprBuilder filled = LinearExpr.newBuilder();
        private final List<LinearExprBuilder> supply = new ArrayList<>();

        Compact(RackModel rack) {
            this.rack = rack;
            for (int s = 0; s < rack.supplies; s++) {
                supply.add(LinearExpr.newBuilder());
            }
            for (Bundle b : rack.bundles) {
                for (int copy = 0; copy < b.count(); copy++) {
                    List<Literal> ways = new ArrayList<>();
                    for (Prepared r : b.preparations()) {
                        ways.add(cut(r));
                    }
                    cp.addAtMostOne(ways);
                }
            }
            List<LinearExprBuilder> team = new ArrayList<>();
            rack.teams.forEach(t -> team.add(LinearExpr.newBuilder()));
            for (Flow f : rack.flows) {
                IntVar flow = cp.newIntVar(0, rack.teams.get(f.team()).quantity(), "");
                flows.add(flow);
                team.get(f.team()).add(flow);
                filled.addTerm(flow, rack.teams.get(f.team()).weight());
                supply.get(f.neckSupply()).addTerm(flow, -1);
                supply.get(f.headSupply()).addTerm(flow, -1);
            }
            rack.teams.forEach(t -> cp.addLessOrEqual(team.get(t.index()), t.quantity()));
            supply.forEach(s -> cp.addEquality(s, 0));
        }

        private BoolVar cut(Prepared r) {
            BoolVar used = cp.newBoolVar("");
            LinearExprBuilder parts = LinearExpr.newBuilder();
            List<List<IntVar>> counts = new ArrayList<>();
            for (Site s : r.sites()) {
                List<IntVar> count = segment(s, used);
                count.forEach(parts::add);
                counts.add(count);
            }
            cp.addGreaterOrEqual(parts, used);
            cents.addTerm(used, r.baseCents());
            cuts.add(new Cut(r, used, counts));
            return used;
        }

        private List<IntVar> segment(Site s, BoolVar used) {
            Menu menu = s.menu();
            long room = s.lengthUm() + s.preparation().squareKerfUm();
            List<IntVar> counts = new ArrayList<>();
            LinearExprBuilder length = LinearExpr.newBuilder();
            for (int from = 0; from < menu.size(); ) {
                int to = from;
                LinearExprBuilder run = LinearExpr.newBuilder();
                while (to < menu.size() && menu.run()[to] == menu.run()[from]) {
                    long most = Math.min(rack.kindLimit[menu.kinds()[to]], room / menu.shortUm()[to]);
                    IntVar count = cp.newIntVar(0, most, "");
                    counts.add(count);
                    supply.get(menu.supply()[to]).add(count);
                    length.addTerm(count, menu.shortUm()[to]);
                    run.add(count);
                    to++;
                }
                long cut = s.cutUm(from);
                if (menu.alone()[from]) {
                    length.addTerm(run, cut);
                } else {
                    IntVar groups = cp.newIntVar(0, room / cut, "");
                    cp.addGreaterOrEqual(LinearExpr.term(groups, 2), run);
                    length.addTerm(groups, cut);
                }
                from = to;
            }
            LinearExpr taken = length.build();
            cp.addLessOrEqual(taken, LinearExpr.term(used, room));
            loss(s, used, taken);
            return counts;
        }

        /** What the segment is worth less: whole as a rest, less the rest that is left, by the sort of rest it is. */
        private void loss(Site s, BoolVar used, LinearExpr taken) {
            long whole = s.rule().restCents(s.lengthUm());
            IntVar worth = cp.newIntVar(0, whole, "");
            IntVar lost = cp.newIntVar(0, whole, "");
            cp.addGreaterOrEqual(LinearExpr.newBuilder().add(lost).add(worth), LinearExpr.term(used, whole));
            List<Literal> sorts = new ArrayList<>();
            BoolVar waste = cp.newBoolVar("");
            cp.addEquality(worth, 0).onlyEnforceIf(waste);
            sorts.add(waste);
            for (SearchProblem.RestValue v : s.rule().rests()) {
                if (v.fromUm() > s.lengthUm()) {
                    continue;
                }
                BoolVar sort = cp.newBoolVar("");
                sorts.add(sort);
                cp.addLessOrEqual(taken, s.lengthUm() - v.fromUm()).onlyEnforceIf(sort);
                cp.addLessOrEqual(
                                LinearExpr.newBuilder()
                                        .addTerm(worth, CENTS_SCALE)
                                        .addTerm(taken, v.centsPerKm()),
                                Math.multiplyExact(s.lengthUm(), v.centsPerKm()))
                        .onlyEnforceIf(sort);
            }
            cp.addExactlyOne(sorts);
            cents.add(lost);
        }

        CutPlan plan(CpSolver solver) {
            Map<SiteLayout, Integer> layouts = new LinkedHashMap<>();
            int[] prepared = new int[rack.prepared.size()];
            for (Cut cut : cuts) {
                if (!solver.booleanValue(cut.used())) {
                    continue;
                }
                prepared[cut.prepared().index()]++;
                for (int s = 0; s < cut.count().size(); s++) {
                    List<IntVar> counts = cut.count().get(s);
                    int[] at = new int[counts.size()];
                    int[] times = new int[counts.size()];
                    int distinct = 0;
                    for (int i = 0; i < counts.size(); i++) {
                        int n = (int) solver.value(counts.get(i));
                        if (n > 0) {
                            at[distinct] = i;
                            times[distinct++] = n;
                        }
                    }
                    if (distinct > 0) {
                        layouts.merge(
                                new SiteLayout(
                                        cut.prepared().sites().get(s),
                                        Arrays.copyOf(at, distinct),
                                        Arrays.copyOf(times, distinct)),
                                1,
                                Integer::sum);
                    }
                }
            }
            int[] made = flows.stream().mapToInt(f -> (int) solver.value(f)).toArray();
            return PlanWriter.write(rack, new Choice(layouts, prepared, made));
        }
    }

    @Override
    public SearchResult solve(SearchProblem problem, Duration limit, SearchWatch watch) {
        SearchClock clock = new SearchClock(limit, watch);
        Incumbent best = new Incumbent(clock);
        Compact compact = new Compact(new RackModel(problem));
        long filledBound = problem.orderedWeight();
        long centsBound = Long.MIN_VALUE;
        compact.cp.maximize(compact.filled);
        CpSolver first = ask(compact, clock, best);
        if (first != null) {
            filledBound = (long) Math.floor(first.bestObjectiveBound() + 1e-6);
            compact.cp.clearObjective();
            compact.cp.addGreaterOrEqual(compact.filled, best.plan().value(Measure.FILLED));
            compact.cp.minimize(compact.cents);
            CpSolver second = ask(compact, clock, best);
            centsBound = second == null ? centsBound : (long) Math.ceil(second.bestObjectiveBound() - 1e-6);
        }
        List<Level> levels = new ArrayList<>();
        for (Measure m : Measure.values()) {
            long bound = m == Measure.FILLED ? filledBound : m == Measure.BOOK_VALUE ? centsBound : 0;
            levels.add(new Level(m, best.plan().value(m), bound));
        }
        return new SearchResult(
                Status.GAP, levels, best.plan().layouts(), best.plan().pairs(), "compact CP-SAT", clock.seconds());
    }

    /** Null when there was no plan in time. */
    private static @Nullable CpSolver ask(Compact compact, SearchClock clock, Incumbent best) {
        if (clock.over()) {
            return null;
        }
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setMaxTimeInSeconds(Math.max(0.01, clock.leftMillis() / 1000.0));
        CountDownLatch ended = new CountDownLatch(1);
        Thread guard = new Thread(() -> stopInTime(solver, clock, ended), "compact-watch");
        guard.setDaemon(true);
        guard.start();
        CpSolverStatus status = solver.solve(compact.cp);
        ended.countDown();
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            return null;
        }
        best.offer(compact.plan(solver));
        return solver;
    }

    private static void stopInTime(CpSolver solver, SearchClock clock, CountDownLatch ended) {
        try {
            while (!ended.await(EVERY_MILLIS, TimeUnit.MILLISECONDS)) {
                if (clock.over()) {
                    solver.stopSearch();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
