package org.scarfwright.week;

import org.scarfwright.week.schedule.Scheduler;

/** Which search lays the work. */
interface Searches {
    Chosen choose();

    /** @param note what a person must know of the choice; empty for the exact search */
    record Chosen(Scheduler scheduler, String note) {}
}
