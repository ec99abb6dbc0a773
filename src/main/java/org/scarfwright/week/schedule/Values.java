package org.scarfwright.week.schedule;

import java.util.Comparator;
import org.scarfwright.week.schedule.Schedule.Measure;

/** What a schedule is worth by each measure. */
record Values(long late, long setUps, long days) {
    /** The better first. */
    static final Comparator<Values> BETTER = Comparator.comparingLong(Values::late)
            .thenComparingLong(Values::setUps)
            .thenComparingLong(Values::days);

    long of(Measure measure) {
        return switch (measure) {
            case LATE -> late;
            case SET_UPS -> setUps;
            case DAYS -> days;
        };
    }

    /** The same with another value of one measure. */
    Values with(Measure measure, long value) {
        return switch (measure) {
            case LATE -> new Values(value, setUps, days);
            case SET_UPS -> new Values(late, value, days);
            case DAYS -> new Values(late, setUps, value);
        };
    }
}
