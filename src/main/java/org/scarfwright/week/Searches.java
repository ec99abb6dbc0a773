package org.scarfwright.week;

import org.scarfwright.week.schedule.Scheduler;

/** Which search lays the work. */
interface Searches {
    Chosen choose();

    /**
     * @param note what a person must know of the choice; empty for the exact search
     * @param looksOn whether more time can give a better schedule
     */
    record Chosen(Scheduler scheduler, String note, boolean looksOn) {}
}
