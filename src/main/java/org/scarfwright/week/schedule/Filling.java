package org.scarfwright.week.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Work;
import org.scarfwright.week.schedule.Slots.Open;

/**
 * Times on days that are given: day by day what follows earlier days first, so that clamps come free, then set-up by set-up what
 * is cut, then what is put together. It finds times quickly where the order hardly matters, as with one person, and says nothing
 * where it finds none.
 */
final class Filling {
    /** How often a work may be moved to be followed soon enough. */
    private static final int MOVES = 200;

    /** In which order the set-ups of a day are made. */
    enum Order {
        /** What needs the least before it first. */
        SHORT_FIRST,
        LONG_FIRST,
        AS_LISTED
    }

    private final Slots slots;
    private final ScheduleProblem problem;
    private final Order order;
    private final int[] day;
    private final Timetable table;
    private final int[] earliest;

    private Filling(Slots slots, int[] day, Order order) {
        this.slots = slots;
        this.order = order;
        problem = slots.problem;
        this.day = day;
        table = new Timetable(slots);
        earliest = new int[day.length];
    }

    /** @param day by work; below 0 for one that goes where there is room, before what waits for it or after what it waits for */
    static Optional<Laid> laid(Slots slots, int[] day, Order order) {
        Filling filling = new Filling(slots, day, order);
        for (int d = 0; d < slots.days.size(); d++) {
            if (!filling.day(d)) {
                return Optional.empty();
            }
        }
        for (int w = 0; w < day.length; w++) {
            if (!filling.isPlaced(w) && !filling.place(w, slots.days.size())) {
                return Optional.empty();
            }
        }
        return Optional.of(filling.table.laid());
    }

    private boolean isPlaced(int work) {
        return table.start[work] != Timetable.UNPLACED;
    }

    private boolean day(int d) {
        for (int w = 0; w < day.length; w++) {
            if (day[w] < 0 && !isPlaced(w) && waited(w)) {
                place(w, d);
            }
        }
        Map<String, List<Integer>> bySetUp = new LinkedHashMap<>();
        for (int w = 0; w < day.length; w++) {
            int work = w;
            if (day[w] == d) {
                problem.works()
                        .get(w)
                        .setUp()
                        .ifPresent(s -> bySetUp.computeIfAbsent(s.name(), k -> new ArrayList<>())
                                .add(work));
            }
        }
        List<List<Integer>> batches = new ArrayList<>(bySetUp.values());
        switch (order) {
            case SHORT_FIRST -> batches.sort(Comparator.comparingInt(this::ahead));
            case LONG_FIRST ->
                batches.sort(Comparator.comparingInt((List<Integer> works) -> ahead(works))
                        .reversed());
            case AS_LISTED -> {}
        }
        for (List<Integer> batch : batches) {
            for (int w : batch) {
                if (!placeBefore(w, d)) {
                    return false;
                }
            }
            for (int w : batch) {
                if (!place(w, d)) {
                    return false;
                }
            }
        }
        for (int w = 0; w < day.length; w++) {
            if (day[w] == d && !isPlaced(w) && !leads(w) && !together(w, d)) {
                return false;
            }
        }
        for (int i = 0; i < slots.open.size(); i++) {
            Open o = slots.open.get(i);
            if (o.day() == d && o.people() == 1) {
                ahead(o);
            }
        }
        return true;
    }

    /** Fills what is left of a stretch with works that wait for nothing and are needed next, so that as little as can be stays empty. */
    private void ahead(Open o) {
        TreeMap<Integer, List<Integer>> byNeed = new TreeMap<>();
        for (int w = 0; w < day.length; w++) {
            if (day[w] < 0 && !isPlaced(w) && problem.works().get(w).after().isEmpty()) {
                byNeed.computeIfAbsent(needed(w), k -> new ArrayList<>()).add(w);
            }
        }
        for (List<Integer> works : byNeed.values()) {
            int from = o.from();
            for (int w = 0; w < day.length; w++) {
                if (isPlaced(w) && table.start[w] < o.to()) {
                    from = Math.max(from, table.end(w));
                }
            }
            for (int w : fullest(works, o.to() - from)) {
                if (!table.place(w, from)) {
                    return;
                }
            }
        }
    }

    /** The first day something that waits for the work lies on. */
    private int needed(int work) {
        int first = slots.days.size();
        for (int w = work + 1; w < day.length; w++) {
            for (After a : problem.works().get(w).after()) {
                if (a.work() == work) {
                    first = Math.min(first, day[w] >= 0 ? day[w] : needed(w));
                }
            }
        }
        return first;
    }

    /** Those of the works that together take most of the room, and no more than it. */
    private List<Integer> fullest(List<Integer> works, int room) {
        Map<Integer, List<Integer>> bySum = new TreeMap<>();
        bySum.put(0, List.of());
        for (int w : works) {
            Map<Integer, List<Integer>> more = new TreeMap<>();
            bySum.forEach((sum, chosen) -> {
                int with = sum + slots.size(w);
                if (with <= room && !bySum.containsKey(with)) {
                    List<Integer> one = new ArrayList<>(chosen);
                    one.add(w);
                    more.put(with, one);
                }
            });
            bySum.putAll(more);
        }
        List<Integer> best = List.of();
        for (List<Integer> chosen : bySum.values()) {
            best = chosen;
        }
        return best;
    }

    /** Slots of what has to be done before these works. */
    private int ahead(List<Integer> works) {
        int sum = 0;
        for (int w : works) {
            for (After a : problem.works().get(w).after()) {
                sum += isPlaced(a.work()) ? 0 : slots.size(a.work());
            }
        }
        return sum;
    }

    private boolean waited(int work) {
        List<After> after = problem.works().get(work).after();
        return !after.isEmpty() && after.stream().allMatch(a -> isPlaced(a.work()));
    }

    /** Whether another work of its day follows that is placed with it. */
    private boolean leads(int work) {
        for (int w = work + 1; w < day.length; w++) {
            for (After a : problem.works().get(w).after()) {
                if (a.work() == work
                        && day[w] == day[work]
                        && (a.sameDay() || a.atMost().isPresent())) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Places a work after all that it waits for, and these again where one follows another too late. */
    private boolean together(int work, int d) {
        int mark = table.mark();
        for (int i = 0; i < MOVES; i++) {
            if (!placeBefore(work, d) || !place(work, d)) {
                return false;
            }
            if (!moved(work)) {
                return true;
            }
            table.back(mark);
        }
        return false;
    }

    private boolean moved(int work) {
        for (After a : problem.works().get(work).after()) {
            int excess = table.start[work] - table.end(a.work()) - slots.atMost(a);
            if (excess > 0) {
                earliest[a.work()] = table.start[a.work()] + excess;
                return true;
            }
        }
        return false;
    }

    private boolean placeBefore(int work, int d) {
        for (After a : problem.works().get(work).after()) {
            if (!isPlaced(a.work()) && !(placeBefore(a.work(), d) && place(a.work(), d))) {
                return false;
            }
        }
        return true;
    }

    private boolean place(int work, int d) {
        int from = earliest[work];
        Work w = problem.works().get(work);
        for (After a : w.after()) {
            from = Math.max(from, table.end(a.work()) + slots.atLeast(a));
        }
        int mark = table.mark();
        boolean kept = table.place(work, day[work] < 0 ? from : Math.max(from, opens(day[work])))
                && (day[work] < 0 ? dayOf(work) <= d : dayOf(work) == day[work]);
        for (After a : w.after()) {
            kept &= !a.sameDay() || !kept || dayOf(work) == dayOf(a.work());
        }
        for (Hold h : problem.holds()) {
            kept = kept && (h.last() != work || table.hold(h));
        }
        if (!kept) {
            table.back(mark);
        }
        return kept;
    }

    private int opens(int d) {
        return slots.open.stream()
                .filter(o -> o.day() >= d)
                .mapToInt(Slots.Open::from)
                .findFirst()
                .orElse(slots.end);
    }

    private int dayOf(int work) {
        return slots.open.get(slots.stretch(table.start[work])).day();
    }
}
