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
import java.util.Optional;
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

    /** How many set-ups more than the fewest are tried where the fewest are not enough. */
    private static final int MORE_SET_UPS = 2;

    private static final Values NO_AIM = new Values(Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE);

    /** Parts of the time that is left, for a question that others follow. */
    private static final int PART = 4;

    private static final int HALF = 2;

    /** Hundredths of a day. */
    private static final int FULL = 100;

    /** How much of every day may be filled, tried one after another where a full day finds no times. */
    private static final List<Integer> SHARES = List.of(95, 90, FULL);

    /** The same where the days may be more. */
    private static final List<Integer> LOOSER = List.of(95, 88);

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
            forgetUnproved();
            return slots.schedule(best, bound, ENGINE);
        }

        /** A bound found for schedules as good as another bound says nothing of schedules that are only as good as the one at hand. */
        private void forgetUnproved() {
            boolean proved = true;
            for (Measure m : Measure.values()) {
                if (!proved) {
                    bound.put(m, bounds.of(m));
                }
                proved &= value(m) <= known(m);
            }
        }

        /** No schedule has less; what was found of the measures after it, for schedules that had less, no longer holds. */
        private void raise(Measure m, long least) {
            if (least <= known(m)) {
                return;
            }
            bound.put(m, least);
            for (Measure later : Measure.values()) {
                if (later.compareTo(m) > 0) {
                    bound.put(later, bounds.of(later));
                }
            }
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
         * Works on days first, which gives the bounds; then times on those days. Where a day is too full for that, the same with a
         * little less of every day. Most weeks need each set-up once and nothing late: that is asked first.
         */
        private void byDays() {
            int distinct = slots.setUps().size();
            int all = slots.days.size();
            long least = known(Measure.LATE);
            if (best.values(slots).late() > least) {
                Days late = days(new Question(Measure.LATE, NO_AIM, FULL, null), HALF);
                raise(Measure.LATE, late.bound());
                least = known(Measure.LATE);
            }
            Found found = fewestSetUps(new Values(least, distinct, all));
            if (found == null) {
                found = leastLate(new Values(NO_AIM.late(), distinct, all));
            }
            if (found == null) {
                return;
            }
            if (found.certain()) {
                raise(Measure.SET_UPS, found.aim().setUps());
                raise(Measure.DAYS, found.days().bound());
            }
            // A day that is not quite full finds its times sooner.
            List<Days> asked = new ArrayList<>();
            for (int share : SHARES) {
                Values aim = found.aim().with(Measure.DAYS, found.days().value());
                Days days = share == FULL
                        ? found.days()
                        : days(new Question(Measure.DAYS, aim, share, found.split()), PART);
                if ((days.isFound() && filled(days, found.aim())) || over()) {
                    return;
                }
                asked.add(days);
            }
            for (Days days : asked) {
                if ((days.isFound() && times(days, found.aim())) || over()) {
                    return;
                }
            }
            for (int share : LOOSER) {
                Days days = days(new Question(Measure.DAYS, found.aim(), share, found.split()), PART);
                if ((days.isFound() && times(days, found.aim())) || over()) {
                    return;
                }
            }
        }

        /**
         * Works on days with as few set-ups as there can be: every set-up once; where that does not do, one of them once more, each
         * tried; and so on.
         */
        private @Nullable Found fewestSetUps(Values aim) {
            List<String> names = slots.setUps();
            List<List<String>> splits = List.of(List.of());
            boolean certain = true;
            for (int more = 0; more <= MORE_SET_UPS && !over(); more++) {
                Values wanted = aim.with(Measure.SET_UPS, aim.setUps() + more);
                @Nullable Found best = null;
                long lowest = Long.MAX_VALUE;
                for (List<String> split : splits) {
                    Values better = best == null
                            ? wanted
                            : wanted.with(Measure.DAYS, best.days().value() - 1);
                    Days days = fewest(new Question(Measure.DAYS, better, FULL, split));
                    certain &= days.isProved();
                    if (days.isFound()) {
                        best = new Found(days, wanted, split, false);
                        lowest = Math.min(lowest, days.bound());
                    }
                    if (best != null && best.days().value() <= known(Measure.DAYS)) {
                        break;
                    }
                    if (over()) {
                        certain = false;
                        break;
                    }
                }
                if (best != null) {
                    Days days = best.days();
                    long least = certain ? lowest : 0;
                    return new Found(
                            new Days(days.status(), days.day(), days.value(), least), wanted, best.split(), certain);
                }
                splits = longer(splits, names);
            }
            return null;
        }

        /**
         * Where every set-up is made once, asks for the fewest days nothing speaks against, and for one more: that is answered sooner
         * than coming down to it, and mostly enough.
         */
        private Days fewest(Question question) {
            Values aim = question.aim();
            for (long few = known(Measure.DAYS); few < known(Measure.DAYS) + 2 && few < aim.days(); few++) {
                if (!List.of().equals(question.split())) {
                    break;
                }
                Days met = days(
                        new Question(
                                question.minimise(), aim.with(Measure.DAYS, few), question.share(), question.split()),
                        PART);
                if (met.isFound()) {
                    return met;
                }
                if (!met.isProved()) {
                    break;
                }
            }
            return days(question, PART);
        }

        /** With every set-up once: as little late as that allows, then as few days. */
        private @Nullable Found leastLate(Values aim) {
            Days late = days(new Question(Measure.LATE, aim, FULL, List.of()), HALF);
            if (!late.isFound()) {
                return null;
            }
            Values wanted = aim.with(Measure.LATE, late.value());
            Days days = days(new Question(Measure.DAYS, wanted, FULL, List.of()), HALF);
            return days.isFound() ? new Found(days, wanted, List.of(), false) : null;
        }

        private static List<List<String>> longer(List<List<String>> splits, List<String> names) {
            List<List<String>> longer = new ArrayList<>();
            for (List<String> split : splits) {
                int from = split.isEmpty() ? 0 : names.indexOf(split.get(split.size() - 1));
                for (String name : names.subList(from, names.size())) {
                    List<String> one = new ArrayList<>(split);
                    one.add(name);
                    longer.add(one);
                }
            }
            return longer;
        }

        /** @param part one in so many of the time that is left */
        private Days days(Question question, int part) {
            DayModel model = new DayModel(slots, question);
            CpSolver solver = solver(part);
            CpSolverStatus status = solver.solve(model.cp, new Stop(cancelled));
            boolean some = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
            return new Days(
                    status,
                    some ? model.days(solver) : new int[0],
                    some ? Math.round(solver.objectiveValue()) : 0,
                    some || status == CpSolverStatus.UNKNOWN
                            ? (long) Math.ceil(solver.bestObjectiveBound() - 1e-6)
                            : 0);
        }

        /** Finds times on these days by filling them in some order; true when one did. */
        private boolean filled(Days days, Values aim) {
            for (Filling.Order order : Filling.Order.values()) {
                Optional<Laid> filled = Filling.laid(slots, days.day(), order);
                if (filled.isPresent()) {
                    Values values = filled.get().values(slots);
                    if (Values.BETTER.compare(values, best.values(slots)) < 0) {
                        best = filled.get();
                    }
                    if (values.late() <= aim.late()
                            && values.setUps() <= aim.setUps()
                            && values.days() <= days.value()) {
                        return true;
                    }
                }
            }
            return false;
        }

        /** Finds times on these days, by filling them or by searching; true when it did. */
        private boolean times(Days days, Values aim) {
            if (filled(days, aim)) {
                return true;
            }
            Model model = new Model(
                    slots,
                    best,
                    new Limits(
                            aim.late(),
                            aim.setUps(),
                            Math.toIntExact(Math.min(slots.days.size(), days.value())),
                            days.day(),
                            null));
            if (!model.fits()) {
                return false;
            }
            CpSolver solver = solver(HALF);
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
            switch (m) {
                case LATE -> {
                    if (!meets(
                            new Limits(known(m), Long.MAX_VALUE, Math.toIntExact(value(Measure.DAYS)), null, null))) {
                        minimise(m);
                    }
                }
                case SET_UPS -> {
                    if (!fewestFromBelow()) {
                        minimise(m);
                    }
                }
                case DAYS -> fewerDays();
            }
        }

        /** Takes a schedule within these limits; a bound that can be met is met sooner by asking for it than by coming down to it. */
        private boolean meets(Limits limits) {
            return ask(limits, HALF) == CpSolverStatus.OPTIMAL;
        }

        private CpSolverStatus ask(Limits limits, int part) {
            Model model = new Model(slots, best, limits);
            if (!model.fits()) {
                return CpSolverStatus.INFEASIBLE;
            }
            CpSolver solver = solver(part);
            CpSolverStatus status = solver.solve(model.cp, new Stop(cancelled));
            if (status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE) {
                best = model.laid(solver);
                return CpSolverStatus.OPTIMAL;
            }
            return status;
        }

        /** Tries as few set-ups as nothing speaks against, and one more each time there is no way; false when time ran out over one. */
        private boolean fewestFromBelow() {
            while (value(Measure.SET_UPS) > known(Measure.SET_UPS) && !over()) {
                CpSolverStatus status = ask(
                        new Limits(value(Measure.LATE), known(Measure.SET_UPS), slots.days.size(), null, null), PART);
                if (status == CpSolverStatus.OPTIMAL) {
                    return true;
                }
                if (status != CpSolverStatus.INFEASIBLE) {
                    return false;
                }
                raise(Measure.SET_UPS, known(Measure.SET_UPS) + 1);
            }
            return true;
        }

        private void minimise(Measure m) {
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
                raise(m, (long) Math.ceil(solver.bestObjectiveBound() - 1e-6));
            } else if (status != CpSolverStatus.UNKNOWN) {
                throw new IllegalStateException("The schedule at hand breaks a rule of the model: " + status);
            }
        }

        /** Tries the fewest days nothing speaks against, and a day more each time there is no way. */
        private void fewerDays() {
            Values values = best.values(slots);
            for (int days = Math.toIntExact(known(Measure.DAYS)); days < value(Measure.DAYS) && !over(); days++) {
                CpSolverStatus status = ask(new Limits(values.late(), values.setUps(), days, null, null), 1);
                if (status == CpSolverStatus.UNKNOWN) {
                    return;
                }
                if (status == CpSolverStatus.INFEASIBLE) {
                    raise(Measure.DAYS, days + 1L);
                }
            }
        }

        /**
         * One worker and a seed of its own: the same problem gives the same schedule. Its linear relaxation holds all that can be said
         * linearly: without that a week with many set-ups is not bounded.
         */
        private CpSolver solver() {
            return solver(1);
        }

        private CpSolver solver(int part) {
            CpSolver solver = new CpSolver();
            double seconds = (deadline - System.nanoTime()) / 1e9 / part;
            solver.getParameters()
                    .setNumWorkers(1)
                    .setLinearizationLevel(2)
                    .setRandomSeed(1)
                    .setMaxTimeInSeconds(Math.max(0.01, seconds));
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
    private record Days(CpSolverStatus status, int[] day, long value, long bound) {
        /** Nothing is left open: the best, or that there is none. */
        boolean isProved() {
            return status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.INFEASIBLE;
        }

        boolean isFound() {
            return status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        }
    }

    /**
     * What is asked of days.
     *
     * @param aim the measures before the one minimised are to be no worse than this
     * @param share hundredths of every day's hours that may be filled
     * @param split the set-ups that may be made more than once, all others are made once; null to leave set-ups out of it, as if
     *     a saw needed none
     */
    private record Question(
            Measure minimise,
            Values aim,
            int share,
            @Nullable List<String> split) {}

    /**
     * Works on days that keep an aim.
     *
     * @param split the set-ups that may be made more than once
     * @param certain nothing with fewer set-ups, or in fewer days than the bound says, was left untried
     */
    private record Found(Days days, Values aim, List<String> split, boolean certain) {}

    /**
     * Works on days, the hours of a day as one sum. It asks less than a schedule must keep, so that what it cannot do no schedule
     * can; a schedule may ask more.
     *
     * <p>Works that wait for nothing, such as flattening, and works that only follow a cure have no day of their own: the hours of
     * the first are spent before what waits for them, the hours of the second when the cure allows.
     */
    private static final class DayModel {
        private static final int NO_DAY = -1;

        final CpModel cp = new CpModel();
        private final Slots slots;
        private final ScheduleProblem problem;
        private final int days;
        /** By work: the first of the works that lie on one day with it. */
        private final int[] unit;
        /** By work: slots from the start of its unit to its own, at the least. */
        private final int[] offset;

        private final boolean[] head;
        private final boolean[] tail;
        /** By tail: the work before all tails that it follows. */
        private final int[] root;

        private final List<List<Integer>> next = new ArrayList<>();
        private final List<List<Range>> starts = new ArrayList<>();
        private final Map<Integer, Map<Integer, BoolVar>> on = new LinkedHashMap<>();
        /** By tail and day of its root: the slot it ends in at the earliest; the end of all hours when it finds no time. */
        private final Map<Integer, int[]> tailEnds = new LinkedHashMap<>();

        DayModel(Slots slots, Question question) {
            this.slots = slots;
            problem = slots.problem;
            days = slots.days.size();
            int n = problem.works().size();
            unit = new int[n];
            offset = new int[n];
            head = new boolean[n];
            tail = new boolean[n];
            root = new int[n];
            for (int w = 0; w < n; w++) {
                unit[w] = w;
                next.add(new ArrayList<>());
                starts.add(slots.starts(w));
            }
            for (int w = 0; w < n; w++) {
                for (After a : problem.works().get(w).after()) {
                    next.get(a.work()).add(w);
                    if (a.sameDay()) {
                        join(w, a.work());
                    }
                }
            }
            List<String> split = question.split();
            if (split != null) {
                Map<String, Integer> first = new LinkedHashMap<>();
                for (int w = 0; w < n; w++) {
                    int work = w;
                    problem.works()
                            .get(w)
                            .setUp()
                            .filter(s -> !split.contains(s.name()))
                            .ifPresent(s -> join(work, first.computeIfAbsent(s.name(), k -> work)));
                }
            }
            sort(split == null);
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
            on.values().forEach(where -> cp.addExactlyOne(where.values().toArray(new BoolVar[0])));
            for (int w = 0; w < n; w++) {
                if (tail[w]) {
                    tailEnds(w);
                }
                for (After a : problem.works().get(w).after()) {
                    if (!tail[w] && !head[a.work()] && unit[a.work()] != unit[w]) {
                        order(a, w);
                    }
                }
            }
            holds();
            LinearExpr setUps = capacity(question.share());
            LinearExpr late = late();
            Values aim = question.aim();
            if (question.minimise() != Measure.LATE) {
                cp.addLessOrEqual(late, aim.late());
            }
            if (aim.setUps() < Long.MAX_VALUE) {
                cp.addLessOrEqual(setUps, aim.setUps());
            }
            cp.minimize(question.minimise() == Measure.LATE ? late : last(aim));
        }

        private void join(int a, int b) {
            int first = Math.min(unit[a], unit[b]);
            int other = Math.max(unit[a], unit[b]);
            for (int w = 0; w < unit.length; w++) {
                if (unit[w] == other) {
                    unit[w] = first;
                }
            }
        }

        /** Tells heads and tails. */
        private void sort(boolean freeSetUps) {
            int n = unit.length;
            int[] inUnit = new int[n];
            for (int u : unit) {
                inUnit[u]++;
            }
            for (int w = n - 1; w >= 0; w--) {
                Work work = problem.works().get(w);
                boolean plain = inUnit[unit[w]] == 1
                        && work.setUp().isEmpty()
                        && work.day().isEmpty();
                tail[w] =
                        plain && !work.after().isEmpty() && next.get(w).stream().allMatch(v -> tail[v]);
            }
            for (int w = 0; w < n; w++) {
                Work work = problem.works().get(w);
                head[w] = inUnit[unit[w]] == 1
                        && (work.setUp().isEmpty() || freeSetUps)
                        && work.day().isEmpty()
                        && work.notBefore().isEmpty()
                        && !next.get(w).isEmpty()
                        && next.get(w).stream().noneMatch(v -> tail[v])
                        && work.after().stream().allMatch(a -> head[a.work()] && slots.atLeast(a) == 0);
            }
            while (dropTails()) {
                // One that is no tail any more may be what made another one.
            }
        }

        /** What follows works of different days, or something does that is no tail, has a day of its own; true when one was found. */
        private boolean dropTails() {
            boolean dropped = false;
            for (int w = 0; w < tail.length; w++) {
                if (!tail[w]) {
                    continue;
                }
                root[w] = NO_DAY;
                boolean fine = next.get(w).stream().allMatch(v -> tail[v]);
                for (After a : problem.works().get(w).after()) {
                    int before = tail[a.work()] ? root[a.work()] : a.work();
                    fine &= before != NO_DAY && !head[before] && (root[w] == NO_DAY || unit[root[w]] == unit[before]);
                    root[w] = before;
                }
                if (!fine) {
                    tail[w] = false;
                    dropped = true;
                }
            }
            return dropped;
        }

        /** Days all works of a unit can lie on. */
        private void days(int w) {
            if (head[w] || tail[w]) {
                return;
            }
            List<Integer> possible =
                    starts.get(w).stream().map(this::dayOf).distinct().toList();
            Map<Integer, BoolVar> where = on.get(unit[w]);
            if (where == null) {
                Map<Integer, BoolVar> created = new LinkedHashMap<>();
                possible.forEach(day -> created.put(day, cp.newBoolVar("work " + w + " on " + day)));
                on.put(unit[w], created);
            } else {
                where.forEach((day, here) -> {
                    if (!possible.contains(day)) {
                        cp.addEquality(here, 0);
                    }
                });
            }
        }

        private int dayOf(Range r) {
            return slots.open.get(r.stretch()).day();
        }

        /** The day of a slot something ends in. */
        private int dayOfEnd(int end) {
            for (Open o : slots.open) {
                if (end <= o.to()) {
                    return o.day();
                }
            }
            return days;
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

        private int firstOn(int w, int day) {
            int opens = slots.open.stream()
                    .filter(o -> o.day() == day)
                    .mapToInt(Open::from)
                    .min()
                    .orElse(slots.end);
            return starts.get(w).stream()
                    .filter(r -> dayOf(r) == day && r.last() >= opens + offset[w])
                    .mapToInt(r -> Math.max(r.first(), opens + offset[w]))
                    .min()
                    .orElse(slots.end);
        }

        private void tailEnds(int w) {
            int[] ends = new int[days];
            for (int day = 0; day < days; day++) {
                int from = 0;
                for (After a : problem.works().get(w).after()) {
                    int[] before = tailEnds.get(a.work());
                    int end = before == null ? firstOn(a.work(), day) + slots.size(a.work()) : before[day];
                    from = Math.max(from, end + slots.atLeast(a));
                }
                int earliest = from;
                ends[day] = starts.get(w).stream()
                                .filter(r -> r.last() >= earliest)
                                .mapToInt(r -> Math.max(r.first(), earliest))
                                .min()
                                .orElse(slots.end)
                        + slots.size(w);
                BoolVar here = of(root[w]).get(day);
                if (ends[day] > slots.end && here != null) {
                    cp.addEquality(here, 0);
                }
            }
            tailEnds.put(w, ends);
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
            int latest = starts.get(w).stream()
                    .filter(r -> dayOf(r) == day)
                    .mapToInt(Range::last)
                    .max()
                    .orElse(-1);
            for (int other = day; other >= 0; other--) {
                if (firstOn(a.work(), other) + slots.size(a.work()) + slots.atLeast(a) <= latest) {
                    return other;
                }
            }
            return -1;
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
                        held(h, day, here);
                    }
                    cp.addLessOrEqual(here, problem.resources().get(r).count());
                }
            }
        }

        private void held(Hold h, int day, LinearExprBuilder here) {
            if (tail[h.last()]) {
                int[] ends = java.util.Objects.requireNonNull(tailEnds.get(h.last()));
                of(root[h.last()]).forEach((from, lies) -> {
                    if (from <= day
                            && dayOfEnd(ends[from]) > day
                            && h.first()
                                    .filter(f -> unit[f] == unit[root[h.last()]])
                                    .isPresent()) {
                        here.add(lies);
                    }
                });
                return;
            }
            if (h.first().isPresent()) {
                here.add(by(h.first().get(), day));
            } else {
                here.add(1);
            }
            here.addTerm(by(h.last(), day), -1);
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
            Map<Integer, List<Integer>> heads = new LinkedHashMap<>();
            List<Integer> tails = new ArrayList<>();
            for (int w = 0; w < unit.length; w++) {
                int work = w;
                Work needed = problem.works().get(w);
                if (head[w]) {
                    heads.computeIfAbsent(needed.resource().orElse(NO_DAY), k -> new ArrayList<>())
                            .add(w);
                    continue;
                }
                if (tail[w]) {
                    tails.add(w);
                    continue;
                }
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
                    works.stream().distinct().forEach(w -> cp.addImplication(w, made));
                    people.get(day).addTerm(made, slots.setUp(work));
                    machines.get(day).get(machine).addTerm(made, slots.setUp(work));
                    setUps.add(made);
                    all.add(made);
                });
                cp.addAtLeastOne(all.toArray(new BoolVar[0]));
            });
            heads.forEach((resource, works) -> spendBefore(resource, works, people, machines));
            if (!tails.isEmpty()) {
                spendAfter(tails, people);
            }
            for (int day = 0; day < days; day++) {
                long hours = 0;
                for (Open o : slots.open) {
                    hours += o.day() == day ? o.to() - o.from() : 0;
                }
                cp.addLessOrEqual(people.get(day), handsOn(day) * share / FULL);
                for (int r = 0; r < problem.resources().size(); r++) {
                    cp.addLessOrEqual(
                            machines.get(day).get(r),
                            hours * problem.resources().get(r).count() * share / FULL);
                }
            }
            return setUps.build();
        }

        private long handsOn(int day) {
            long slotsOfDay = 0;
            for (Open o : slots.open) {
                slotsOfDay += o.day() == day ? (long) (o.to() - o.from()) * o.people() : 0;
            }
            return slotsOfDay;
        }

        /** The hours of works that wait for nothing are spent by the day of what waits for them. */
        private void spendBefore(
                int resource,
                List<Integer> works,
                List<LinearExprBuilder> people,
                List<List<LinearExprBuilder>> machines) {
            IntVar[] spent = new IntVar[days];
            for (int day = 0; day < days; day++) {
                spent[day] = cp.newIntVar(0, handsOn(day), "heads of " + resource + " on " + day);
                people.get(day).add(spent[day]);
                if (resource != NO_DAY) {
                    machines.get(day).get(resource).add(spent[day]);
                }
                LinearExprBuilder due = LinearExpr.newBuilder();
                for (int w : works) {
                    int waiting = next.get(w).get(0);
                    while (head[waiting]) {
                        waiting = next.get(waiting).get(0);
                    }
                    due.addTerm(by(waiting, day), slots.size(w));
                }
                cp.addGreaterOrEqual(LinearExpr.sum(Arrays.copyOf(spent, day + 1)), due);
            }
            cp.addEquality(
                    LinearExpr.sum(spent), works.stream().mapToLong(slots::size).sum());
        }

        /** The hours of works that follow a cure are spent when it allows, and before the goals that are met are due. */
        private void spendAfter(List<Integer> works, List<LinearExprBuilder> people) {
            IntVar[] spent = new IntVar[days];
            for (int day = 0; day < days; day++) {
                int today = day;
                spent[day] = cp.newIntVar(0, handsOn(day), "tails on " + day);
                people.get(day).add(spent[day]);
                LinearExprBuilder possible = LinearExpr.newBuilder();
                for (int w : works) {
                    int[] ends = java.util.Objects.requireNonNull(tailEnds.get(w));
                    of(root[w]).forEach((from, lies) -> {
                        if (dayOfEnd(ends[from]) <= today) {
                            possible.addTerm(lies, slots.size(w));
                        }
                    });
                }
                cp.addLessOrEqual(LinearExpr.sum(Arrays.copyOf(spent, day + 1)), possible);
            }
            cp.addEquality(
                    LinearExpr.sum(spent), works.stream().mapToLong(slots::size).sum());
            for (int r = 0; r < problem.resources().size(); r++) {
                freedBefore(r, spent);
            }
            for (int day = 0; day < days; day++) {
                LinearExprBuilder met = LinearExpr.newBuilder();
                boolean some = false;
                for (int g = 0; g < problem.goals().size(); g++) {
                    int goal = problem.goals().get(g).work();
                    int due = slots.due(g);
                    if (tail[goal] && due < slots.end && dayOfEnd(Math.max(1, due)) <= day) {
                        int[] ends = java.util.Objects.requireNonNull(tailEnds.get(goal));
                        some = true;
                        of(root[goal]).forEach((from, lies) -> {
                            if (ends[from] <= due) {
                                met.addTerm(lies, slots.size(goal));
                            }
                        });
                    }
                }
                if (some) {
                    cp.addGreaterOrEqual(LinearExpr.sum(Arrays.copyOf(spent, day + 1)), met);
                }
            }
        }

        /** What is begun to be held beyond the number there is waits for others to be freed: the hours of that are spent by then. */
        private void freedBefore(int resource, IntVar[] spent) {
            List<Hold> held = problem.holds().stream()
                    .filter(h -> h.resource() == resource && tail[h.last()])
                    .toList();
            if (held.isEmpty()) {
                return;
            }
            int least = held.stream().mapToInt(h -> slots.size(h.last())).min().orElse(0);
            long count = problem.resources().get(resource).count();
            for (int day = 0; day < days; day++) {
                LinearExprBuilder begun = LinearExpr.newBuilder();
                for (Hold h : held) {
                    if (h.first().isEmpty()) {
                        begun.add(least);
                    } else {
                        begun.addTerm(by(h.first().get(), day), least);
                    }
                }
                cp.addGreaterOrEqual(LinearExpr.sum(Arrays.copyOf(spent, day + 1)), begun.add(-least * count));
            }
        }

        private LinearExpr late() {
            LinearExprBuilder late = LinearExpr.newBuilder();
            for (int g = 0; g < problem.goals().size(); g++) {
                Goal goal = problem.goals().get(g);
                int work = goal.work();
                int due = slots.due(g);
                of(tail[work] ? root[work] : work).forEach((day, here) -> {
                    int end = tail[work]
                            ? java.util.Objects.requireNonNull(tailEnds.get(work))[day]
                            : firstOn(work, day) + slots.size(work);
                    if (end > due) {
                        late.addTerm(here, goal.weight());
                    }
                });
            }
            return late.build();
        }

        private IntVar last(Values aim) {
            IntVar last = cp.newIntVar(0, Math.min(days, aim.days()), "last day");
            on.forEach((u, where) -> {
                LinearExprBuilder day = LinearExpr.newBuilder();
                where.forEach((d, here) -> day.addTerm(here, d + 1L));
                cp.addLessOrEqual(day, last);
            });
            tailEnds.forEach((w, ends) -> {
                if (next.get(w).isEmpty()) {
                    LinearExprBuilder day = LinearExpr.newBuilder();
                    of(root[w]).forEach((d, here) -> day.addTerm(here, Math.min(days, dayOfEnd(ends[d]) + 1L)));
                    cp.addLessOrEqual(day, last);
                }
            });
            return last;
        }

        /** By work; -1 for one that has no day of its own. */
        int[] days(CpSolver solver) {
            int[] found = new int[unit.length];
            for (int w = 0; w < found.length; w++) {
                found[w] = of(w).entrySet().stream()
                        .filter(e -> solver.booleanValue(e.getValue()))
                        .map(Map.Entry::getKey)
                        .findFirst()
                        .orElse(NO_DAY);
            }
            return found;
        }
    }

    /**
     * What a schedule must keep.
     *
     * @param day by work, the day it lies on, below 0 where that is left open; null when it is left open for all
     * @param minimise null for any schedule that keeps the rest
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    record Limits(
            long late,
            long setUps,
            int days,
            int @Nullable [] day,
            @Nullable Measure minimise) {}

    /** Times within limits. */
    static final class Model {
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
            hours();
            machines();
            people();

            LinearExprBuilder late = LinearExpr.newBuilder();
            for (int g = 0; g < problem.goals().size(); g++) {
                Goal goal = problem.goals().get(g);
                BoolVar isLate = cp.newBoolVar("late " + g);
                cp.addLessOrEqual(start[goal.work()], (long) slots.due(g) - slots.size(goal.work()))
                        .onlyEnforceIf(isLate.not());
                cp.addGreaterOrEqual(
                        LinearExpr.newBuilder()
                                .add(isLate)
                                .add(upTo(goal.work(), lastBefore(slots.due(g) - slots.size(goal.work())))),
                        1);
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
            List<Range> ranges = slots.starts(w).stream()
                    .filter(r -> slots.open.get(r.stretch()).day() < limits.days())
                    .filter(r -> limits.day() == null
                            || limits.day()[w] < 0
                            || slots.open.get(r.stretch()).day() == limits.day()[w])
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
            for (Range r : ranges) {
                BoolVar here = cp.newBoolVar("work " + w + " in " + r.stretch());
                cp.addGreaterOrEqual(start[w], r.first()).onlyEnforceIf(here);
                cp.addLessOrEqual(start[w], r.last()).onlyEnforceIf(here);
                cp.addHint(here, r.first() <= known[w] && known[w] <= r.last());
                where.put(r.stretch(), here);
            }
            cp.addExactlyOne(where.values().toArray(new BoolVar[0]));
            in.add(where);
        }

        private void order(int w) {
            for (After a : problem.works().get(w).after()) {
                long gap = (long) slots.size(a.work()) + slots.atLeast(a);
                byStretch(a, w);
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

        /** What the waits say of stretches alone; it follows from the starts, and is what bounds are found by. */
        private void byStretch(After a, int w) {
            for (int stretch : in.get(w).keySet()) {
                int latest = slots.open.get(stretch).to() - slots.size(w) - slots.atLeast(a) - slots.size(a.work());
                cp.addLessOrEqual(upTo(w, stretch), upTo(a.work(), lastBefore(latest)));
            }
        }

        /** The last stretch that is open in this slot or before it. */
        private int lastBefore(int slot) {
            int last = -1;
            for (int i = 0; i < slots.open.size(); i++) {
                last = slots.open.get(i).from() <= slot ? i : last;
            }
            return last;
        }

        /** One when the work lies in this stretch or before. */
        private LinearExpr upTo(int w, int stretch) {
            return LinearExpr.sum(in.get(w).entrySet().stream()
                    .filter(e -> e.getKey() <= stretch)
                    .map(Map.Entry::getValue)
                    .toArray(BoolVar[]::new));
        }

        /** The hours of a stretch hold what lies in it. */
        private void hours() {
            for (int i = 0; i < slots.open.size(); i++) {
                LinearExprBuilder spent = LinearExpr.newBuilder();
                for (int w = 0; w < start.length; w++) {
                    BoolVar here = in.get(w).get(i);
                    if (here != null) {
                        spent.addTerm(here, slots.size(w));
                    }
                }
                for (Made m : made) {
                    if (m.stretch() == i) {
                        spent.addTerm(m.made(), slots.setUp(m.works().get(0)));
                    }
                }
                Open o = slots.open.get(i);
                cp.addLessOrEqual(spent, (long) (o.to() - o.from()) * o.people());
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
                    cp.addBoolOr(possible.stream().map(w -> in.get(w).get(here)).toArray(BoolVar[]::new))
                            .onlyEnforceIf(isMade);
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
                onceMore(name, works);
            }
            byMachine.forEach(this::batches);
        }

        /**
         * Where some of its works are done by the end of a stretch and others are not, a set-up is made twice. It follows from the
         * rest, and says to the linear relaxation what dividing a set-up costs.
         */
        private void onceMore(String name, List<Integer> works) {
            LinearExpr all = LinearExpr.sum(made.stream()
                    .filter(m -> m.name().equals(name))
                    .map(Made::made)
                    .toArray(BoolVar[]::new));
            cp.addGreaterOrEqual(all, 1);
            for (int s = 0; s + 1 < slots.open.size() && works.size() > 1; s++) {
                BoolVar some = cp.newBoolVar(name + " begun by " + s);
                BoolVar done = cp.newBoolVar(name + " done by " + s);
                for (int w : works) {
                    cp.addLessOrEqual(upTo(w, s), some);
                    cp.addLessOrEqual(done, upTo(w, s));
                }
                cp.addGreaterOrEqual(
                        all, LinearExpr.newBuilder().add(some).addTerm(done, -1).add(1));
            }
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
