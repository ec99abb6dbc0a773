package org.scarfwright.week;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.week.WorkStep.Neck;

/**
 * One week of the schedule that holds.
 *
 * @param laying how it was laid; empty when nothing was laid yet
 * @param looksOn whether a better schedule is still looked for; where one is found it replaces this one
 * @param days Monday to Sunday
 * @param remarks what the schedule says of necks of accepted plans up to this week
 * @param unlaid necks of accepted plans up to this week that have something left to do and no time for it, without those that were
 *     left out with a reason
 * @param beyond necks of this week's plans with a step after its Sunday
 */
public record LaidWeek(
        IsoWeek week,
        Optional<Laying> laying,
        boolean looksOn,
        List<Day> days,
        List<Remark> remarks,
        int unlaid,
        List<Neck> beyond) {
    public LaidWeek {
        days = List.copyOf(days);
        remarks = List.copyOf(remarks);
        beyond = List.copyOf(beyond);
    }

    /**
     * How the schedule was made.
     *
     * @param week everything up to this week was laid
     * @param engine which search made it
     * @param note what a person must know of it, such as that the exact search could not be used; may be empty
     * @param levels late, set-ups, days, in this order
     */
    public record Laying(
            IsoWeek week, Instant madeAt, String engine, int milliseconds, String note, List<Level> levels) {
        public Laying {
            levels = List.copyOf(levels);
        }

        public boolean proved() {
            return levels.stream().allMatch(Level::proved);
        }
    }

    /**
     * One measure, smaller is better.
     *
     * @param name late, setUps or days
     * @param bound no schedule as good on the levels before has less
     */
    public record Level(String name, long value, long bound) {
        public boolean proved() {
            return bound >= value;
        }
    }

    /**
     * One day.
     *
     * @param closed why the shop is closed; empty when it is open
     * @param hours when it is open
     * @param steps in order of their starts; what is done stands where it was done
     * @param inClamps joints in clamps at some time of the day
     */
    public record Day(
            LocalDate day,
            Optional<String> closed,
            List<Stretch> hours,
            List<WorkStep> steps,
            List<SetUp> setUps,
            List<Held> inClamps) {
        public Day {
            hours = List.copyOf(hours);
            steps = List.copyOf(steps);
            setUps = List.copyOf(setUps);
            inClamps = List.copyOf(inClamps);
        }
    }

    /** A saw brought to a setting for all the cuts that need it. */
    public record SetUp(String machine, String name, Instant start, Instant ready, Instant end) {}

    /**
     * A joint in clamps, and then curing.
     *
     * @param from glued then
     * @param opened clamps come off then
     * @param cured it may be worked then
     */
    public record Held(Neck neck, Instant from, Instant opened, Instant cured) {}

    /** What the schedule says of a neck. */
    public record Remark(String order, int number, Kind kind, String sentence) {
        /** What it is about. */
        public enum Kind {
            LATE,
            LEFT_OUT,
            NOTE
        }

        public String title() {
            return order + " no. " + number;
        }
    }
}
