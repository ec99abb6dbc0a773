package org.scarfwright.week.schedule;

import java.time.Duration;
import java.util.function.BooleanSupplier;

/** Lays works on days. Always the same for the same problem unless time runs out. */
public interface Scheduler {
    /**
     * @param limit wall time after which the best so far is returned with its bounds
     * @param cancelled asked often; true stops the search, which keeps the best so far
     * @throws UnschedulableException when works cannot be laid inside the hours at all
     */
    Schedule lay(ScheduleProblem problem, Duration limit, BooleanSupplier cancelled);
}
