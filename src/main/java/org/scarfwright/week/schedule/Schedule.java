package org.scarfwright.week.schedule;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/**
 * Works on days.
 *
 * @param placed by work
 * @param setUps in order of their starts
 * @param levels what it is judged by, in order
 * @param engine which search made it
 */
public record Schedule(List<Placed> placed, List<SetUpMade> setUps, List<Level> levels, String engine) {
    public Schedule {
        placed = List.copyOf(placed);
        setUps = List.copyOf(setUps);
        levels = List.copyOf(levels);
    }

    /** The better first: by the first measure, then by the second, then by the third. */
    public static final Comparator<Schedule> BY_VALUES = Comparator.comparing(Schedule::values, Values.BETTER);

    private Values values() {
        return new Values(
                levels.get(0).value(), levels.get(1).value(), levels.get(2).value());
    }

    /** When a work is done. */
    public record Placed(Instant start, Instant end) {}

    /**
     * A machine brought to a set-up for the works that need it.
     *
     * @param resource index of the machine
     * @param ready when setting up is done
     * @param end when the last of its works is done
     */
    public record SetUpMade(String name, int resource, Instant start, Instant ready, Instant end) {}

    /** What a schedule is judged by. */
    public enum Measure {
        /** Weight of what is late. */
        LATE,
        /** Set-ups, each counted once for every stretch of hours it is made in. */
        SET_UPS,
        /** Days with shop hours until everything is done, the first counted as one. */
        DAYS
    }

    /**
     * One measure, smaller is better.
     *
     * @param bound no schedule as good on the levels before has less
     */
    public record Level(Measure measure, long value, long bound) {
        public boolean proved() {
            return bound >= value;
        }
    }

    public boolean proved() {
        return levels.stream().allMatch(Level::proved);
    }
}
