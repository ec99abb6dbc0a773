package org.scarfwright.week.schedule;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Work;
import org.scarfwright.week.schedule.UnschedulableException.Reason;

/**
 * Places works one after another, each as early as it can be, in three orders: neck by neck as they are due, step by step with
 * like set-ups together, and set-up by set-up and then neck by neck. The best is the answer; its bounds come from what each goal
 * needs by itself.
 */
public final class GreedyScheduler implements Scheduler {
    /** Name of this search in a schedule. */
    public static final String ENGINE = "one after another";

    /** How often one more goal is put last without that helping, before it is left at that. */
    private static final int PATIENCE = 3;

    private static final int NONE = -1;

    @Override
    public Schedule lay(ScheduleProblem problem, Duration limit, BooleanSupplier cancelled) {
        Slots slots = new Slots(problem);
        Bounds bounds = new Bounds(slots);
        Map<Measure, Long> known = new EnumMap<>(Measure.class);
        for (Measure m : Measure.values()) {
            known.put(m, bounds.of(m));
        }
        return slots.schedule(laid(slots), known, ENGINE);
    }

    /**
     * The best of the orders. Goals that are late whatever is done come last, so that they make no others late; so does, one more
     * each time, the lightest that is late, for as long as that helps.
     */
    static Laid laid(Slots slots) {
        Bounds bounds = new Bounds(slots);
        List<ScheduleProblem.Goal> goals = slots.problem.goals();
        boolean[] lost = new boolean[goals.size()];
        Laid best = best(slots, lost);
        for (int g = 0; g < lost.length; g++) {
            lost[g] = bounds.earliestEnd(goals.get(g).work()) > slots.due(g);
        }
        Laid last = best;
        int fruitless = 0;
        while (last.values(slots).late() > bounds.of(Measure.LATE) && fruitless < PATIENCE) {
            last = best(slots, lost);
            if (Values.BETTER.compare(last.values(slots), best.values(slots)) < 0) {
                best = last;
                fruitless = 0;
            } else {
                fruitless++;
            }
            int lightest = NONE;
            for (int g = 0; g < lost.length; g++) {
                boolean late = last.end(slots, goals.get(g).work()) > slots.due(g);
                if (late
                        && !lost[g]
                        && (lightest == NONE
                                || goals.get(g).weight() < goals.get(lightest).weight())) {
                    lightest = g;
                }
            }
            if (lightest == NONE) {
                break;
            }
            lost[lightest] = true;
        }
        return best;
    }

    /** The best of the orders; one that finds no time for something is passed over unless all do. */
    private static Laid best(Slots slots, boolean[] lost) {
        @Nullable Laid best = null;
        @Nullable UnschedulableException fault = null;
        for (List<List<Integer>> order : new Units(slots, lost).orders()) {
            try {
                Laid laid = new Run(slots, order).laid();
                if (best == null || Values.BETTER.compare(laid.values(slots), best.values(slots)) < 0) {
                    best = laid;
                }
            } catch (UnschedulableException e) {
                fault = e;
            }
        }
        if (best == null) {
            throw fault == null ? new IllegalStateException("There is no order to try") : fault;
        }
        return best;
    }

    /** Works that are placed together because one must follow another soon, or because something is held between them. */
    private static final class Units {
        /**
         * @param due of the first goal that waits for it
         * @param setUp place of the set-up that it or what follows needs, set-ups due first first; the last where none does
         * @param before it comes before the cut that needs the set-up, or is that cut
         */
        private record Unit(List<Integer> works, int depth, int due, int setUp, boolean before) {}

        private final List<Unit> all = new ArrayList<>();

        /** @param lost by goal: it comes after all others */
        Units(Slots slots, boolean[] lost) {
            ScheduleProblem problem = slots.problem;
            int n = problem.works().size();
            int[] unit = new int[n];
            for (int w = 0; w < n; w++) {
                unit[w] = w;
            }
            for (int w = 0; w < n; w++) {
                for (After a : problem.works().get(w).after()) {
                    if (a.sameDay() || a.atMost().isPresent()) {
                        join(unit, w, a.work());
                    }
                }
            }
            for (Hold h : problem.holds()) {
                if (h.first().isPresent()) {
                    join(unit, h.first().get(), h.last());
                    // What lies between them belongs to them.
                    between(problem, h.first().get(), h.last()).forEach(w -> join(unit, w, h.last()));
                }
            }
            int[] due = new int[n];
            Arrays.fill(due, Integer.MAX_VALUE);
            for (int g = 0; g < problem.goals().size(); g++) {
                int w = problem.goals().get(g).work();
                due[w] = Math.min(due[w], lost[g] ? slots.end + slots.due(g) : slots.due(g));
            }
            for (int w = n - 1; w >= 0; w--) {
                for (After a : problem.works().get(w).after()) {
                    due[a.work()] = Math.min(due[a.work()], due[w]);
                }
            }
            int[] depth = new int[n];
            for (boolean moved = true; moved; ) {
                moved = false;
                for (int w = 0; w < n; w++) {
                    for (After a : problem.works().get(w).after()) {
                        int least = unit[a.work()] == unit[w] ? depth[a.work()] : depth[a.work()] + 1;
                        for (int v = 0; v < n; v++) {
                            if (unit[v] == unit[w] && depth[v] < least) {
                                depth[v] = least;
                                moved = true;
                            }
                        }
                    }
                }
            }
            int[] setUp = setUpsAhead(problem, due);
            for (int u = 0; u < n; u++) {
                List<Integer> works = new ArrayList<>();
                int first = Integer.MAX_VALUE;
                int ahead = Integer.MAX_VALUE;
                for (int w = 0; w < n; w++) {
                    if (unit[w] == u) {
                        works.add(w);
                        first = Math.min(first, due[w]);
                        ahead = Math.min(ahead, setUp[w]);
                    }
                }
                if (!works.isEmpty()) {
                    all.add(new Unit(works, depth[works.get(0)], first, ahead, ahead < Integer.MAX_VALUE));
                }
            }
        }

        /** By work: the place of the first set-up that it or a work behind it needs. */
        private static int[] setUpsAhead(ScheduleProblem problem, int[] due) {
            Map<String, Integer> firstDue = new TreeMap<>();
            for (int w = 0; w < due.length; w++) {
                int at = due[w];
                problem.works().get(w).setUp().ifPresent(s -> firstDue.merge(s.name(), at, Math::min));
            }
            List<String> inOrder = firstDue.keySet().stream()
                    .sorted(Comparator.comparing(name -> firstDue.getOrDefault(name, 0)))
                    .toList();
            int[] ahead = new int[due.length];
            Arrays.fill(ahead, Integer.MAX_VALUE);
            for (int w = due.length - 1; w >= 0; w--) {
                Work work = problem.works().get(w);
                if (work.setUp().isPresent()) {
                    ahead[w] = Math.min(
                            ahead[w], inOrder.indexOf(work.setUp().get().name()));
                }
                for (After a : work.after()) {
                    ahead[a.work()] = Math.min(ahead[a.work()], ahead[w]);
                }
            }
            return ahead;
        }

        private static void join(int[] unit, int a, int b) {
            int from = unit[b];
            int to = unit[a];
            for (int w = 0; w < unit.length; w++) {
                if (unit[w] == from) {
                    unit[w] = to;
                }
            }
        }

        private static List<Integer> between(ScheduleProblem problem, int first, int last) {
            boolean[] follows = new boolean[last + 1];
            follows[first] = true;
            List<Integer> found = new ArrayList<>();
            for (int w = first + 1; w <= last; w++) {
                for (After a : problem.works().get(w).after()) {
                    follows[w] |= a.work() >= first && follows[a.work()];
                }
                if (follows[w]) {
                    found.add(w);
                }
            }
            return found;
        }

        /** Neck by neck; step by step; set-up by set-up and then neck by neck. */
        List<List<List<Integer>>> orders() {
            return List.of(
                    sorted(Comparator.comparingInt(Unit::due).thenComparingInt(Unit::depth)),
                    sorted(Comparator.comparingInt(Unit::depth)
                            .thenComparingInt(Unit::setUp)
                            .thenComparingInt(Unit::due)),
                    sorted(Comparator.comparing((Unit u) -> !u.before())
                            .thenComparingInt(Unit::setUp)
                            .thenComparingInt(u -> u.before() ? u.depth() : 0)
                            .thenComparingInt(Unit::due)
                            .thenComparingInt(Unit::depth)));
        }

        private List<List<Integer>> sorted(Comparator<Unit> order) {
            return all.stream()
                    .sorted(order.thenComparing(u -> u.works().get(0)))
                    .map(Unit::works)
                    .toList();
        }
    }

    private static final class Run {
        private final Slots slots;
        private final ScheduleProblem problem;
        private final List<List<Integer>> units;
        private final Timetable table;
        private final int[] earliest;

        Run(Slots slots, List<List<Integer>> units) {
            this.slots = slots;
            this.units = units;
            problem = slots.problem;
            table = new Timetable(slots);
            earliest = new int[problem.works().size()];
        }

        Laid laid() {
            // What is occupied from the beginning is freed first, whatever the order.
            for (Hold h : problem.holds()) {
                if (h.first().isEmpty()) {
                    units.stream().filter(u -> u.contains(h.last())).forEach(this::placeAfterOthers);
                }
            }
            units.forEach(this::placeAfterOthers);
            return table.laid();
        }

        private void placeAfterOthers(List<Integer> unit) {
            if (table.start[unit.get(0)] != Timetable.UNPLACED) {
                return;
            }
            for (int w : unit) {
                for (After a : problem.works().get(w).after()) {
                    if (!unit.contains(a.work()) && table.start[a.work()] == Timetable.UNPLACED) {
                        units.stream()
                                .filter(u -> u.contains(a.work()))
                                .findFirst()
                                .ifPresent(this::placeAfterOthers);
                    }
                }
            }
            int mark = table.mark();
            while (!together(unit)) {
                table.back(mark);
            }
        }

        /** Tries once; when one follows another too late, the other is not to start so early the next time. */
        private boolean together(List<Integer> unit) {
            for (int w : unit) {
                int from = earliest[w];
                for (After a : problem.works().get(w).after()) {
                    from = Math.max(from, table.end(a.work()) + slots.atLeast(a));
                }
                if (!table.place(w, from)) {
                    throw new UnschedulableException(problem, w, Reason.NO_TIME_LEFT);
                }
                for (After a : problem.works().get(w).after()) {
                    int excess = table.start[w] - table.end(a.work()) - slots.atMost(a);
                    if (excess > 0) {
                        earliest[a.work()] = table.start[a.work()] + excess;
                        return false;
                    }
                    if (a.sameDay() && day(w) != day(a.work())) {
                        earliest[a.work()] = firstOf(day(a.work()) + 1);
                        return false;
                    }
                }
                for (Hold h : problem.holds()) {
                    if (h.last() == w && !table.hold(h)) {
                        int first = h.first().orElse(w);
                        earliest[first] = table.start[first] + 1;
                        return false;
                    }
                }
            }
            return true;
        }

        private int day(int work) {
            return slots.open.get(slots.stretch(table.start[work])).day();
        }

        private int firstOf(int day) {
            return slots.open.stream()
                    .filter(o -> o.day() >= day)
                    .mapToInt(Slots.Open::from)
                    .findFirst()
                    .orElse(slots.end);
        }
    }
}
