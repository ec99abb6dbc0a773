package org.scarfwright.week.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.scarfwright.week.schedule.Laid.Batch;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Work;
import org.scarfwright.week.schedule.Slots.Open;
import org.scarfwright.week.schedule.Slots.Range;

/** Works being placed one by one, each at the earliest slot left; the last placed can be taken back. */
final class Timetable {
    static final int UNPLACED = -1;

    private final Slots slots;
    final int[] start;
    private final int[] people;
    private final int[][] used;
    private final List<Batch> batches = new ArrayList<>();
    private final List<Runnable> undo = new ArrayList<>();

    Timetable(Slots slots) {
        this.slots = slots;
        start = new int[slots.problem.works().size()];
        Arrays.fill(start, UNPLACED);
        // A slot has free people as far as shop hours reach, and none outside them.
        people = new int[slots.end];
        Arrays.fill(people, slots.most);
        for (Open o : slots.open) {
            Arrays.fill(people, o.from(), o.to(), slots.most - o.people());
        }
        used = new int[slots.problem.resources().size()][slots.end];
    }

    int end(int work) {
        return start[work] + slots.size(work);
    }

    Laid laid() {
        return new Laid(start.clone(), batches);
    }

    int mark() {
        return undo.size();
    }

    void back(int mark) {
        while (undo.size() > mark) {
            undo.remove(undo.size() - 1).run();
        }
    }

    /** Places a work at the earliest slot from the given one on; false when there is none. */
    boolean place(int work, int earliest) {
        for (Range range : slots.starts(work)) {
            for (int at = Math.max(range.first(), earliest); at <= range.last(); at++) {
                if (placeAt(work, at, range.stretch())) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean placeAt(int work, int at, int stretch) {
        Work w = slots.problem.works().get(work);
        int to = at + slots.size(work);
        if (w.setUp().isPresent() && w.resource().isPresent()) {
            return placeInBatch(work, at, stretch);
        }
        if (!free(people, slots.most, at, to)) {
            return false;
        }
        if (w.resource().isPresent()) {
            int r = w.resource().get();
            if (!free(used[r], slots.problem.resources().get(r).count(), at, to)) {
                return false;
            }
            take(used[r], at, to);
        }
        take(people, at, to);
        settle(work, at);
        return true;
    }

    private boolean placeInBatch(int work, int at, int stretch) {
        Work w = slots.problem.works().get(work);
        String setUp = w.setUp().orElseThrow().name();
        int r = w.resource().orElseThrow();
        int to = at + slots.size(work);
        int known = indexOf(setUp, stretch);
        int machineFrom =
                known < 0 ? at - slots.setUp(work) : batches.get(known).to();
        int personFrom = known < 0 ? machineFrom : at;
        if (at < machineFrom
                || !free(used[r], slots.problem.resources().get(r).count(), machineFrom, to)
                || !free(people, slots.most, personFrom, to)) {
            return false;
        }
        take(used[r], machineFrom, to);
        take(people, personFrom, to);
        if (known < 0) {
            batches.add(new Batch(setUp, r, stretch, machineFrom, to));
            undo.add(() -> batches.remove(batches.size() - 1));
        } else {
            Batch before = batches.get(known);
            batches.set(known, new Batch(setUp, r, stretch, before.from(), to));
            undo.add(() -> batches.set(known, before));
        }
        settle(work, at);
        return true;
    }

    private int indexOf(String setUp, int stretch) {
        for (int i = 0; i < batches.size(); i++) {
            if (batches.get(i).stretch() == stretch && batches.get(i).setUp().equals(setUp)) {
                return i;
            }
        }
        return -1;
    }

    /** Occupies what a hold keeps; false when it is not free all the time. */
    boolean hold(Hold hold) {
        int from = hold.first().map(f -> start[f]).orElse(0);
        int to = end(hold.last());
        int[] usage = used[hold.resource()];
        if (!free(usage, slots.problem.resources().get(hold.resource()).count(), from, to)) {
            return false;
        }
        take(usage, from, to);
        return true;
    }

    private void settle(int work, int at) {
        start[work] = at;
        undo.add(() -> start[work] = UNPLACED);
    }

    private void take(int[] usage, int from, int to) {
        add(usage, from, to, 1);
        undo.add(() -> add(usage, from, to, -1));
    }

    private static void add(int[] usage, int from, int to, int by) {
        for (int i = from; i < to; i++) {
            usage[i] += by;
        }
    }

    private static boolean free(int[] usage, int count, int from, int to) {
        if (to > usage.length) {
            return false;
        }
        for (int i = from; i < to; i++) {
            if (usage[i] >= count) {
                return false;
            }
        }
        return true;
    }
}
