package org.scarfwright.week.schedule;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** When each work could end at the earliest if nothing else were in its way: why something is late whatever is done. */
public final class Alone {
    private Alone() {}

    /**
     * By work.
     *
     * @throws UnschedulableException when a work finds no time at all
     */
    public static List<Instant> ends(ScheduleProblem problem) {
        Slots slots = new Slots(problem);
        Bounds bounds = new Bounds(slots);
        List<Instant> ends = new ArrayList<>();
        for (int w = 0; w < problem.works().size(); w++) {
            ends.add(slots.at(bounds.earliestEnd(w)));
        }
        return ends;
    }
}
