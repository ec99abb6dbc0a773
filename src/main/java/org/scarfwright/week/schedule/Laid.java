package org.scarfwright.week.schedule;

import java.util.List;

/**
 * A schedule in slots.
 *
 * @param start by work
 * @param batches every set-up that is made
 */
@SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
record Laid(int[] start, List<Batch> batches) {
    Laid {
        batches = List.copyOf(batches);
    }

    /**
     * A set-up in one stretch of hours; the machine is its own from {@code from} to {@code to}.
     *
     * @param resource the machine
     * @param from first slot of setting up
     * @param to first slot after its last work
     */
    record Batch(String setUp, int resource, int stretch, int from, int to) {}

    Values values(Slots slots) {
        long late = 0;
        for (int g = 0; g < slots.problem.goals().size(); g++) {
            ScheduleProblem.Goal goal = slots.problem.goals().get(g);
            late += end(slots, goal.work()) > slots.due(g) ? goal.weight() : 0;
        }
        int days = 0;
        for (int at : start) {
            days = Math.max(days, slots.open.get(slots.stretch(at)).day() + 1);
        }
        return new Values(late, batches.size(), days);
    }

    int end(Slots slots, int work) {
        return start[work] + slots.size(work);
    }
}
