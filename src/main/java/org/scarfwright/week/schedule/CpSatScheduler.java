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
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
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

    /** Hundredths of a day. */
    private static final int FULL = 100;

    /** How much of every day may be filled, tried one after another where a full day finds no times. */
    private static final List<Integer> SHARES = List.of(97, 94, 90, 85);

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
            }
            if (!proved()) {
                byDays();
            }
            for (Measure m : Measure.values()) {
                if (value(m) > known(m) && !over()) {
                    improve(m);
                }
                if (value(m) > known(m)) {
                    break;
                }
            }
            return slots.schedule(best, bound, ENGINE);
        }

        private long known(Measure m) {
            return bound.getOrDefault(m, 0L);
        }

        private boolean proved() {
            return Arrays.stream(Measure.values()).allMatch(m -> value(m) <= known(m));
        }

        private long value(Measure m) {
            return best.values(slots).of(m);
        }

        private boolean over() {
            return cancelled.getAsBoolean() || System.nanoTime() >= deadline;
        }

        /**
         * Works on days first, one measure after another, which gives the bounds; then times on those days. Where a day is too
         * full for that, the same with a little less of every day.
         */
        private void byDays() {
            Values aim = best.values(slots);
            @Nullable Days found = null;
            for (Measure m : Measure.values()) {
                if (aim.of(m) <= known(m)) {
                    continue;
                }
                Days days = days(m, aim, FULL, found);
                if (days.status() == CpSolverStatus.INFEASIBLE) {
                    throw new IllegalStateException("The schedule at hand breaks a rule of the days");
                }
                bound.merge(m, days.bound(), Math::max);
                if (days.day().length == 0) {
                    break;
                }
                found = days;
                aim = aim.with(m, days.value());
                if (days.status() != CpSolverStatus.OPTIMAL) {
                    break;
                }
            }
            for (int share : SHARES) {
                if (found != null && times(found, aim)) {
                    return;
                }
                if (over()) {
                    return;
                }
                Days looser = days(Measure.DAYS, aim.with(Measure.DAYS, Long.MAX_VALUE), share, found);
                if (looser.day().length == 0) {
                    return;
                }
                found = looser;
            }
        }

        private Days days(Measure m, Values aim, int share, @Nullable Days before) {
            DayModel model = new DayModel(slots, m, aim, share, before == null ? daysOf(best) : before.day());
            CpSolver solver = solver();
            CpSolverStatus status = solver.solve(model.cp, new Stop(cancelled));
            boolean some = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
            return new Days(
                    status,
                    some ? model.days(solver) : new int[0],
                    some ? Math.round(solver.objectiveValue()) : 0,
                    status == CpSolverStatus.OPTIMAL
                                    || status == CpSolverStatus.FEASIBLE
                                    || status == CpSolverStatus.UNKNOWN
                            ? (long) Math.ceil(solver.bestObjectiveBound() - 1e-6)
                            : 0);
        }

        private int[] daysOf(Laid laid) {
            return Arrays.stream(laid.start())
                    .map(at -> slots.open.get(slots.stretch(at)).day())
                    .toArray();
        }

        /** Finds times on these days; true when it did. */
        private boolean times(Days days, Values aim) {
            Model model =
                    new Model(slots, best, new Limits(aim.late(), aim.setUps(), slots.days.size(), days.day(), null));
            if (!model.fits()) {
                return false;
            }
            CpSolver solver = solver();
            CpSolverStatus status = solver.solve(model.cp, new Stop(cancelled));
            if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
                return false;
            }
            Laid laid = model.laid(solver);
            if (Values.BETTER.compare(laid.values(slots), best.values(slots)) < 0) {
                best = laid;
            }
            return true;
        }

        private void improve(Measure m) {
            if (m == Measure.DAYS) {
                fewerDays();
                return;
            }
            Values values = best.values(slots);
            Model model = new Model(
                    slots,
                    best,
                    new Limits(
                            m == Measure.LATE ? Long.MAX_VALUE : values.late(),
                            Long.MAX_VALUE,
                            slots.days.size(),
                            null,
                            m));
            CpSolver solver = solver();
            CpSolverStatus status = solver.solve(model.cp, new Stop(cancelled));
            if (status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE) {
                best = model.laid(solver);
                bound.merge(m, (long) Math.ceil(solver.bestObjectiveBound() - 1e-6), Math::max);
            } else if (status != CpSolverStatus.UNKNOWN) {
                throw new IllegalStateException("The schedule at hand breaks a rule of the model: " + status);
            }
        }

        /** Tries the fewest days nothing speaks against, and a day more each time there is no way. */
        private void fewerDays() {
            Values values = best.values(slots);
            for (int days = Math.toIntExact(known(Measure.DAYS)); days < value(Measure.DAYS) && !over(); days++) {
                Model model = new Model(slots, best, new Limits(values.late(), values.setUps(), days, null, null));
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

    /** What is known of days: a day for each work where one was found; the bound holds for every schedule. */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    private record Days(CpSolverStatus status, int[] day, long value, long bound) {}

    /**
     * Works on days, the hours of a day as one sum. It asks less than a schedule must keep, so that what it cannot do no schedule
     * can; a schedule may ask more.
     */
    private static final class DayModel {
        final CpModel cp = new CpModel();
        private final Slots slots;
        private final ScheduleProblem problem;
        private final int days;
        /** By work: the first of the works that lie on one day with it. */
        private final int[] unit;
        /** By work: slots from the start of the first of its unit's works before it to its own. */
        private final int[] offset;

        private final Map<Integer, Map<Integer, BoolVar>> on = new LinkedHashMap<>();

        /** @param share hundredths of every day's hours that may be filled */
        DayModel(Slots slots, Measure measure, Values aim, int share, int[] hint) {
            this.slots = slots;
            problem = slots.problem;
            days = slots.days.size();
            int n = problem.works().size();
            unit = new int[n];
            offset = new int[n];
            for (int w = 0; w < n; w++) {
                unit[w] = w;
            }
            for (int w = 0; w < n; w++) {
                for (After a : problem.works().get(w).after()) {
                    if (a.sameDay()) {
                        join(unit[w], unit[a.work()]);
                    }
                }
            }
            for (int w = 0; w < n; w++) {
                for (After a : problem.works().get(w).after()) {
                    if (unit[a.work()] == unit[w]) {
                        offset[w] = Math.max(offset[w], offset[a.work()] + slots.size(a.work()) + slots.atLeast(a));
                    }
                }
            }
            for (int w = 0; w < n; w++) {
                days(w);
            }
            on.forEach((u, where) -> {
                cp.addExactlyOne(where.values().toArray(new BoolVar[0]));
                where.forEach((day, here) -> cp.addHint(here, hint[u] == day));
            });
            for (int w = 0; w < n; w++) {
                for (After a : problem.works().get(w).after()) {
                    if (unit[a.work()] != unit[w]) {
                        order(a, w);
                    }
                }
            }
            holds();
            LinearExpr setUps = capacity(share);
            LinearExpr late = late();
            if (measure != Measure.LATE) {
                cp.addLessOrEqual(late, aim.late());
            }
            switch (measure) {
                case LATE -> cp.minimize(late);
                case SET_UPS -> cp.minimize(setUps);
                case DAYS -> {
                    cp.addLessOrEqual(setUps, aim.setUps());
                    cp.minimize(last(aim));
                }
            }
        }

        private void join(int a, int b) {
            int first = Math.min(a, b);
            int other = Math.max(a, b);
            for (int w = 0; w < unit.length; w++) {
                if (unit[w] == other) {
                    unit[w] = first;
                }
            }
        }

        /** Days all works of a unit can lie on. */
        private void days(int w) {
            List<Integer> possible = slots.starts(w).stream()
                    .map(r -> slots.open.get(r.stretch()).day())
                    .distinct()
                    .toList();
            if (unit[w] == w) {
                Map<Integer, BoolVar> where = new LinkedHashMap<>();
                possible.forEach(day -> where.put(day, cp.newBoolVar("work " + w + " on " + day)));
                on.put(w, where);
            } else {
                of(w).forEach((day, here) -> {
                    if (!possible.contains(day)) {
                        cp.addEquality(here, 0);
                    }
                });
            }
        }

        private Map<Integer, BoolVar> of(int w) {
            return on.getOrDefault(unit[w], Map.of());
        }

        /** One when the work lies on this day or before. */
        private LinearExpr by(int w, int day) {
            return LinearExpr.sum(of(w).entrySet().stream()
                    .filter(e -> e.getKey() <= day)
                    .map(Map.Entry::getValue)
                    .toArray(BoolVar[]::new));
        }

        private void order(After a, int w) {
            for (int day = 0; day < days; day++) {
                if (of(w).containsKey(day)) {
                    cp.addLessOrEqual(by(w, day), by(a.work(), lastDayBefore(a, w, day)));
                }
            }
        }

        /** The last day the other work can lie on when this one lies on that day; -1 when there is none. */
        private int lastDayBefore(After a, int w, int day) {
            if (slots.atLeast(a) == 0) {
                return day;
            }
            int latest = slots.starts(w).stream()
                    .filter(r -> slots.open.get(r.stretch()).day() == day)
                    .mapToInt(Range::last)
                    .max()
                    .orElse(-1);
            for (int other = day; other >= 0; other--) {
                int there = other;
                int earliest = slots.starts(a.work()).stream()
                        .filter(r -> slots.open.get(r.stretch()).day() == there)
                        .mapToInt(r -> Math.max(r.first(), opens(there) + offset[a.work()]))
                        .min()
                        .orElse(Integer.MAX_VALUE / 2);
                if (earliest + slots.size(a.work()) + slots.atLeast(a) <= latest) {
                    return other;
                }
            }
            return -1;
        }

        private int opens(int day) {
            return slots.open.stream()
                    .filter(o -> o.day() == day)
                    .mapToInt(Open::from)
                    .min()
                    .orElse(slots.end);
        }

        /** What is held over the end of a day. */
        private void holds() {
            for (int r = 0; r < problem.resources().size(); r++) {
                int resource = r;
                List<Hold> held = problem.holds().stream()
                        .filter(h -> h.resource() == resource)
                        .toList();
                for (int day = 0; day + 1 < days && !held.isEmpty(); day++) {
                    LinearExprBuilder here = LinearExpr.newBuilder();
                    for (Hold h : held) {
                        if (h.first().isPresent()) {
                            here.add(by(h.first().get(), day));
                        } else {
                            here.add(1);
                        }
                        here.addTerm(by(h.last(), day), -1);
                    }
                    cp.addLessOrEqual(here, problem.resources().get(r).count());
                }
            }
        }

        /** Fills the hours of people and machines; gives the number of set-ups. */
        private LinearExpr capacity(int share) {
            LinearExprBuilder setUps = LinearExpr.newBuilder();
            List<LinearExprBuilder> people = new ArrayList<>();
            List<List<LinearExprBuilder>> machines = new ArrayList<>();
            for (int day = 0; day < days; day++) {
                people.add(LinearExpr.newBuilder());
                machines.add(problem.resources().stream()
                        .map(r -> LinearExpr.newBuilder())
                        .toList());
            }
            Map<String, Map<Integer, List<BoolVar>>> needs = new LinkedHashMap<>();
            Map<String, Integer> example = new LinkedHashMap<>();
            for (int w = 0; w < unit.length; w++) {
                int work = w;
                Work needed = problem.works().get(w);
                of(w).forEach((day, here) -> {
                    people.get(day).addTerm(here, slots.size(work));
                    needed.resource().ifPresent(r -> machines.get(day).get(r).addTerm(here, slots.size(work)));
                    needed.setUp().ifPresent(s -> {
                        example.putIfAbsent(s.name(), work);
                        needs.computeIfAbsent(s.name(), k -> new LinkedHashMap<>())
                                .computeIfAbsent(day, k -> new ArrayList<>())
                                .add(here);
                    });
                });
            }
            needs.forEach((name, byDay) -> {
                int work = example.getOrDefault(name, 0);
                int machine = problem.works().get(work).resource().orElseThrow();
                List<BoolVar> all = new ArrayList<>();
                byDay.forEach((day, works) -> {
                    BoolVar made = cp.newBoolVar(name + " on " + day);
                    works.forEach(w -> cp.addImplication(w, made));
                    people.get(day).addTerm(made, slots.setUp(work));
                    machines.get(day).get(machine).addTerm(made, slots.setUp(work));
                    setUps.add(made);
                    all.add(made);
                });
                cp.addAtLeastOne(all.toArray(new BoolVar[0]));
            });
            for (int day = 0; day < days; day++) {
                long hours = 0;
                long handsOn = 0;
                for (Open o : slots.open) {
                    if (o.day() == day) {
                        hours += o.to() - o.from();
                        handsOn += (long) (o.to() - o.from()) * o.people();
                    }
                }
                cp.addLessOrEqual(people.get(day), handsOn * share / FULL);
                for (int r = 0; r < problem.resources().size(); r++) {
                    cp.addLessOrEqual(
                            machines.get(day).get(r),
                            hours * problem.resources().get(r).count() * share / FULL);
                }
            }
            return setUps.build();
        }

        private LinearExpr late() {
            LinearExprBuilder late = LinearExpr.newBuilder();
            for (int g = 0; g < problem.goals().size(); g++) {
                Goal goal = problem.goals().get(g);
                int due = slots.due(g);
                of(goal.work()).forEach((day, here) -> {
                    boolean canBeInTime = slots.starts(goal.work()).stream()
                            .anyMatch(r -> slots.open.get(r.stretch()).day() == day
                                    && r.first() + slots.size(goal.work()) <= due);
                    if (!canBeInTime) {
                        late.addTerm(here, goal.weight());
                    }
                });
            }
            return late.build();
        }

        private IntVar last(Values aim) {
            IntVar last = cp.newIntVar(1, Math.min(days, aim.days()), "last day");
            on.forEach((u, where) -> {
                LinearExprBuilder day = LinearExpr.newBuilder();
                where.forEach((d, here) -> day.addTerm(here, d + 1L));
                cp.addLessOrEqual(day, last);
            });
            return last;
        }

        int[] days(CpSolver solver) {
            int[] found = new int[unit.length];
            for (int w = 0; w < found.length; w++) {
                found[w] = of(w).entrySet().stream()
                        .filter(e -> solver.booleanValue(e.getValue()))
                        .map(Map.Entry::getKey)
                        .findFirst()
                        .orElse(0);
            }
            return found;
        }
    }

    /**
     * What a schedule must keep.
     *
     * @param day by work, the day it lies on; null when that is left open
     * @param minimise null for any schedule that keeps the rest
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    private record Limits(
            long late,
            long setUps,
            int days,
            int @Nullable [] day,
            @Nullable Measure minimise) {}

    /** Times within limits. */
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

        Model(Slots slots, Laid laid, Limits limits) {
            this.slots = slots;
            known = laid.start();
            problem = slots.problem;
            int n = problem.works().size();
            start = new IntVar[n];
            interval = new IntervalVar[n];
            for (int w = 0; w < n; w++) {
                place(w, limits);
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
            if (limits.late() < Long.MAX_VALUE) {
                cp.addLessOrEqual(late, limits.late());
            }
            if (limits.setUps() < Long.MAX_VALUE) {
                cp.addLessOrEqual(setUpCount, limits.setUps());
            }
            if (limits.minimise() == Measure.LATE) {
                cp.minimize(late);
            } else if (limits.minimise() == Measure.SET_UPS) {
                cp.minimize(setUpCount);
            }
        }

        /** Whether every work has somewhere to lie at all. */
        boolean fits() {
            return fits;
        }

        private void place(int w, Limits limits) {
            Work work = problem.works().get(w);
            List<Range> ranges = slots.starts(w).stream()
                    .filter(r -> slots.open.get(r.stretch()).day() < limits.days())
                    .filter(r ->
                            limits.day() == null || slots.open.get(r.stretch()).day() == limits.day()[w])
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
