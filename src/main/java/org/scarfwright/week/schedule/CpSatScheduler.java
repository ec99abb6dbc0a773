package org.scarfwright.week.schedule;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.util.Domain;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.scarfwright.week.schedule.Laid.Batch;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Goal;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Work;
import org.scarfwright.week.schedule.Slots.Open;
import org.scarfwright.week.schedule.Slots.Range;

/**
 * The exact search: CP-SAT with an interval for every work and for every set-up in every stretch of hours, each measure proved
 * before the next is looked at. Starts from the greedy schedule, and asks the solver nothing where that already meets a bound.
 */
public final class CpSatScheduler implements Scheduler {
    /** Name of this search in a schedule. */
    public static final String ENGINE = "OR-Tools: CP-SAT";

    /** Loaded when first asked for, once. */
    private static final class Loaded {
        static final String FAULT = load();

        private static String load() {
            try {
                Loader.loadNativeLibraries();
                CpModel trial = new CpModel();
                IntVar x = trial.newIntVar(0, 5, "x");
                trial.maximize(x);
                CpSolver solver = new CpSolver();
                CpSolverStatus status = solver.solve(trial);
                return status == CpSolverStatus.OPTIMAL && solver.value(x) == 5 ? "" : "the trial model gave " + status;
            } catch (RuntimeException | LinkageError e) {
                return e.getClass().getSimpleName() + ": " + e.getMessage();
            }
        }
    }

    /** True when the native library works here; the first call loads it. */
    public static boolean usable() {
        return Loaded.FAULT.isEmpty();
    }

    /** Why the native library cannot be used; empty when it can. */
    public static String fault() {
        return Loaded.FAULT;
    }

    @Override
    public Schedule lay(ScheduleProblem problem, Duration limit, BooleanSupplier cancelled) {
        if (!usable()) {
            throw new IllegalStateException("The native solver cannot be used: " + fault());
        }
        Slots slots = new Slots(problem);
        return new Run(slots, System.nanoTime() + limit.toNanos(), cancelled).lay();
    }

    private static final class Run {
        private final Slots slots;
        private final long deadline;
        private final BooleanSupplier cancelled;
        private final Bounds bounds;
        private final Map<Measure, Long> bound = new EnumMap<>(Measure.class);
        private Laid best;

        Run(Slots slots, long deadline, BooleanSupplier cancelled) {
            this.slots = slots;
            this.deadline = deadline;
            this.cancelled = cancelled;
            bounds = new Bounds(slots);
            best = GreedyScheduler.laid(slots);
        }

        Schedule lay() {
            for (Measure m : Measure.values()) {
                bound.put(m, bounds.of(m));
                if (value(m) > bounds.of(m) && !over()) {
                    improve(m);
                }
            }
            return slots.schedule(best, bound, ENGINE);
        }

        private long value(Measure m) {
            return best.values(slots).of(m);
        }

        private boolean over() {
            return cancelled.getAsBoolean() || System.nanoTime() >= deadline;
        }

        private void improve(Measure m) {
            if (m == Measure.DAYS) {
                fewerDays();
                return;
            }
            Model model = new Model(slots, best, m, slots.days.size());
            CpSolver solver = solver();
            CpSolverStatus status = solver.solve(model.cp, new Stop(cancelled));
            if (status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE) {
                best = model.laid(solver);
                bound.merge(m, (long) Math.ceil(solver.bestObjectiveBound() - 1e-6), Math::max);
            } else if (status != CpSolverStatus.UNKNOWN) {
                throw new IllegalStateException("The greedy schedule breaks a rule of the model: " + status);
            }
        }

        /** Tries the fewest days nothing speaks against, and a day more each time there is no way. */
        private void fewerDays() {
            for (int days = Math.toIntExact(bounds.of(Measure.DAYS)); days < value(Measure.DAYS) && !over(); days++) {
                Model model = new Model(slots, best, Measure.DAYS, days);
                CpSolver solver = solver();
                CpSolverStatus status =
                        model.fits() ? solver.solve(model.cp, new Stop(cancelled)) : CpSolverStatus.INFEASIBLE;
                if (status == CpSolverStatus.UNKNOWN) {
                    return;
                }
                if (status == CpSolverStatus.INFEASIBLE) {
                    bound.put(Measure.DAYS, days + 1L);
                } else {
                    best = model.laid(solver);
                }
            }
        }

        /** One worker and a seed of its own: the same problem gives the same schedule. */
        private CpSolver solver() {
            CpSolver solver = new CpSolver();
            double seconds = (deadline - System.nanoTime()) / 1e9;
            solver.getParameters().setNumWorkers(1).setRandomSeed(1).setMaxTimeInSeconds(Math.max(0.01, seconds));
            return solver;
        }
    }

    private static final class Stop extends CpSolverSolutionCallback {
        private final BooleanSupplier cancelled;

        Stop(BooleanSupplier cancelled) {
            this.cancelled = cancelled;
        }

        @Override
        public void onSolutionCallback() {
            if (cancelled.getAsBoolean()) {
                stopSearch();
            }
        }
    }

    /** A set-up that may be made in a stretch of hours for these works. */
    private record Made(String name, int resource, int stretch, BoolVar made, IntVar from, List<Integer> works) {}

    /** One measure minimised, those before it no worse than in the schedule given. */
    private static final class Model {
        final CpModel cp = new CpModel();
        private final Slots slots;
        private final ScheduleProblem problem;
        private final IntVar[] start;
        private final IntervalVar[] interval;
        private final List<Map<Integer, BoolVar>> in = new ArrayList<>();
        private final List<IntervalVar> handsOn = new ArrayList<>();
        private final int[] known;
        private final List<Made> made = new ArrayList<>();
        private boolean fits = true;

        Model(Slots slots, Laid laid, Measure measure, int days) {
            this.slots = slots;
            known = laid.start();
            problem = slots.problem;
            int n = problem.works().size();
            start = new IntVar[n];
            interval = new IntervalVar[n];
            Values values = laid.values(slots);
            for (int w = 0; w < n; w++) {
                place(w, days);
            }
            for (int w = 0; w < n; w++) {
                order(w);
            }
            setUps();
            machines();
            people();

            LinearExprBuilder late = LinearExpr.newBuilder();
            for (int g = 0; g < problem.goals().size(); g++) {
                Goal goal = problem.goals().get(g);
                BoolVar isLate = cp.newBoolVar("late " + g);
                cp.addLessOrEqual(start[goal.work()], (long) slots.due(g) - slots.size(goal.work()))
                        .onlyEnforceIf(isLate.not());
                cp.addHint(isLate, known[goal.work()] + slots.size(goal.work()) > slots.due(g));
                late.addTerm(isLate, goal.weight());
            }
            LinearExpr setUpCount = LinearExpr.sum(made.stream().map(Made::made).toArray(BoolVar[]::new));
            switch (measure) {
                case LATE -> cp.minimize(late);
                case SET_UPS -> {
                    cp.addLessOrEqual(late, values.late());
                    cp.minimize(setUpCount);
                }
                case DAYS -> {
                    cp.addLessOrEqual(late, values.late());
                    cp.addLessOrEqual(setUpCount, values.setUps());
                }
            }
        }

        /** Whether every work has somewhere to lie at all. */
        boolean fits() {
            return fits;
        }

        private void place(int w, int days) {
            Work work = problem.works().get(w);
            List<Range> ranges = slots.starts(w).stream()
                    .filter(r -> slots.open.get(r.stretch()).day() < days)
                    .toList();
            fits &= !ranges.isEmpty();
            start[w] = cp.newIntVarFromDomain(
                    Domain.fromIntervals(ranges.stream()
                            .map(r -> new long[] {r.first(), r.last()})
                            .toArray(long[][]::new)),
                    "start " + w);
            interval[w] = cp.newFixedSizeIntervalVar(start[w], slots.size(w), "work " + w);
            handsOn.add(interval[w]);
            cp.addHint(start[w], known[w]);
            Map<Integer, BoolVar> where = new LinkedHashMap<>();
            boolean asked = work.setUp().isPresent()
                    || work.after().stream().anyMatch(After::sameDay)
                    || problem.works().stream()
                            .anyMatch(other -> other.after().stream().anyMatch(a -> a.sameDay() && a.work() == w));
            if (asked) {
                for (Range r : ranges) {
                    BoolVar here = cp.newBoolVar("work " + w + " in " + r.stretch());
                    cp.addGreaterOrEqual(start[w], r.first()).onlyEnforceIf(here);
                    cp.addLessOrEqual(start[w], r.last()).onlyEnforceIf(here);
                    cp.addHint(here, r.first() <= known[w] && known[w] <= r.last());
                    where.put(r.stretch(), here);
                }
                cp.addExactlyOne(where.values().toArray(new BoolVar[0]));
            }
            in.add(where);
        }

        private void order(int w) {
            for (After a : problem.works().get(w).after()) {
                long gap = (long) slots.size(a.work()) + slots.atLeast(a);
                cp.addGreaterOrEqual(start[w], LinearExpr.affine(start[a.work()], 1, gap));
                if (a.atMost().isPresent()) {
                    cp.addLessOrEqual(
                            start[w],
                            LinearExpr.affine(start[a.work()], 1, (long) slots.size(a.work()) + slots.atMost(a)));
                }
                if (a.sameDay()) {
                    for (int day = 0; day < slots.days.size(); day++) {
                        cp.addEquality(on(w, day), on(a.work(), day));
                    }
                }
            }
        }

        /** One when the work lies on the day. */
        private LinearExpr on(int w, int day) {
            return LinearExpr.sum(in.get(w).entrySet().stream()
                    .filter(e -> slots.open.get(e.getKey()).day() == day)
                    .map(Map.Entry::getValue)
                    .toArray(BoolVar[]::new));
        }

        /** Whether each set-up is made in each stretch of hours; the machine is its own from setting up to its last work. */
        private void setUps() {
            Map<Integer, List<IntervalVar>> byMachine = new LinkedHashMap<>();
            for (String name : slots.setUps()) {
                List<Integer> works = new ArrayList<>();
                for (int w = 0; w < start.length; w++) {
                    if (problem.works()
                            .get(w)
                            .setUp()
                            .filter(s -> s.name().equals(name))
                            .isPresent()) {
                        works.add(w);
                    }
                }
                int minutes = slots.setUp(works.get(0));
                for (int stretch = 0; stretch < slots.open.size(); stretch++) {
                    int here = stretch;
                    List<Integer> possible = works.stream()
                            .filter(w -> in.get(w).containsKey(here))
                            .toList();
                    if (possible.isEmpty()) {
                        continue;
                    }
                    Open o = slots.open.get(stretch);
                    BoolVar isMade = cp.newBoolVar(name + " in " + stretch);
                    IntVar from = cp.newIntVar(o.from(), o.to(), name + " from " + stretch);
                    IntVar size = cp.newIntVar(0, (long) o.to() - o.from(), name + " takes " + stretch);
                    IntVar to = cp.newIntVar(o.from(), o.to(), name + " to " + stretch);
                    hint(possible, stretch, minutes, isMade, from, size, to);
                    IntervalVar machine =
                            cp.newOptionalIntervalVar(from, size, to, isMade, name + " machine " + stretch);
                    for (int w : possible) {
                        BoolVar isHere = in.get(w).get(stretch);
                        cp.addImplication(isHere, isMade);
                        cp.addGreaterOrEqual(start[w], LinearExpr.affine(from, 1, minutes))
                                .onlyEnforceIf(isHere);
                        cp.addGreaterOrEqual(to, LinearExpr.affine(start[w], 1, slots.size(w)))
                                .onlyEnforceIf(isHere);
                    }
                    if (minutes > 0) {
                        handsOn.add(
                                cp.newOptionalFixedSizeIntervalVar(from, minutes, isMade, name + " set " + stretch));
                    }
                    int resource = problem.works().get(works.get(0)).resource().orElseThrow();
                    byMachine.computeIfAbsent(resource, k -> new ArrayList<>()).add(machine);
                    made.add(new Made(name, resource, stretch, isMade, from, possible));
                }
            }
            byMachine.forEach(this::batches);
        }

        private void hint(
                List<Integer> works, int stretch, int minutes, BoolVar made, IntVar from, IntVar size, IntVar to) {
            Open o = slots.open.get(stretch);
            int first = Integer.MAX_VALUE;
            int last = 0;
            for (int w : works) {
                if (o.from() <= known[w] && known[w] < o.to()) {
                    first = Math.min(first, known[w] - minutes);
                    last = Math.max(last, known[w] + slots.size(w));
                }
            }
            boolean some = last > 0;
            cp.addHint(made, some);
            cp.addHint(from, some ? first : o.from());
            cp.addHint(to, some ? last : o.from());
            cp.addHint(size, some ? last - first : 0);
        }

        private void batches(int machine, List<IntervalVar> batches) {
            CumulativeConstraint room =
                    cp.addCumulative(problem.resources().get(machine).count());
            for (IntervalVar b : batches) {
                room.addDemand(b, 1);
            }
            for (int w = 0; w < start.length; w++) {
                Work work = problem.works().get(w);
                if (work.setUp().isEmpty()
                        && work.resource().filter(r -> r == machine).isPresent()) {
                    room.addDemand(interval[w], 1);
                }
            }
        }

        private void machines() {
            for (int r = 0; r < problem.resources().size(); r++) {
                int resource = r;
                CumulativeConstraint room =
                        cp.addCumulative(problem.resources().get(r).count());
                for (int w = 0; w < start.length; w++) {
                    if (problem.works()
                            .get(w)
                            .resource()
                            .filter(x -> x == resource)
                            .isPresent()) {
                        room.addDemand(interval[w], 1);
                    }
                }
                for (Hold h : problem.holds()) {
                    if (h.resource() == r) {
                        room.addDemand(held(h), 1);
                    }
                }
            }
        }

        private IntervalVar held(Hold h) {
            int tail = slots.size(h.last());
            String name = "hold until " + h.last();
            IntVar size = cp.newIntVar(0, slots.end, name + " takes");
            int from = h.first().map(f -> known[f]).orElse(0);
            cp.addHint(size, known[h.last()] + tail - from);
            LinearExpr to = LinearExpr.affine(start[h.last()], 1, tail);
            return h.first().isPresent()
                    ? cp.newIntervalVar(start[h.first().get()], size, to, name)
                    : cp.newIntervalVar(LinearExpr.constant(0), size, to, name);
        }

        private void people() {
            CumulativeConstraint people = cp.addCumulative(slots.most);
            handsOn.forEach(i -> people.addDemand(i, 1));
            for (Open o : slots.open) {
                if (o.people() < slots.most) {
                    people.addDemand(
                            cp.newFixedInterval(o.from(), (long) o.to() - o.from(), "fewer people"),
                            (long) slots.most - o.people());
                }
            }
        }

        Laid laid(CpSolver solver) {
            int[] starts = new int[start.length];
            for (int w = 0; w < starts.length; w++) {
                starts[w] = (int) solver.value(start[w]);
            }
            List<Batch> batches = new ArrayList<>();
            for (Made m : made) {
                if (solver.booleanValue(m.made())) {
                    int to = m.works().stream()
                            .filter(w -> solver.booleanValue(in.get(w).get(m.stretch())))
                            .mapToInt(w -> starts[w] + slots.size(w))
                            .max()
                            .orElse(0);
                    if (to > 0) {
                        batches.add(new Batch(m.name(), m.resource(), m.stretch(), (int) solver.value(m.from()), to));
                    }
                }
            }
            return new Laid(starts, batches);
        }
    }
}
