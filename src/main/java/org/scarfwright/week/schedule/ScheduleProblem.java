package org.scarfwright.week.schedule;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Works to be laid on days, and what the shop has for them.
 *
 * @param from nothing starts before
 * @param hours when hands-on work can be done, ascending, not overlapping; no schedule reaches beyond the last
 * @param resources machines, benches, sets of clamps
 * @param works each listed after all that it waits for
 * @param holds what stays occupied between works
 * @param goals what has to be done by when
 */
public record ScheduleProblem(
        Instant from,
        List<Hours> hours,
        List<Resource> resources,
        List<Work> works,
        List<Hold> holds,
        List<Goal> goals) {
    public ScheduleProblem {
        hours = List.copyOf(hours);
        resources = List.copyOf(resources);
        works = List.copyOf(works);
        holds = List.copyOf(holds);
        goals = List.copyOf(goals);
        for (int w = 0; w < works.size(); w++) {
            for (After a : works.get(w).after()) {
                if (a.work() < 0 || a.work() >= w) {
                    throw new IllegalArgumentException(
                            works.get(w).name() + " waits for a work that is not listed before it");
                }
            }
        }
    }

    /**
     * A stretch of shop hours.
     *
     * @param day the date on the shop's wall; a day may have several stretches
     * @param people how many work then, at least 1
     */
    public record Hours(LocalDate day, Instant from, Instant to, int people) {}

    /** Something of which the shop has so many. None is allowed, and makes what needs it impossible. */
    public record Resource(String name, int count) {}

    /**
     * One act of one person, done without a break inside one stretch of shop hours.
     *
     * @param minutes hands-on, at least 1
     * @param resource index of what it occupies meanwhile; empty when nothing
     * @param setUp the set-up of its resource it needs; works of one set-up in one stretch of hours share the setting up and are
     *     done in one go
     * @param after works it waits for
     * @param notBefore wood or an earlier cure is not ready before
     * @param day pinned to this day
     */
    public record Work(
            String name,
            int minutes,
            Optional<Integer> resource,
            Optional<SetUp> setUp,
            List<After> after,
            Optional<Instant> notBefore,
            Optional<LocalDate> day) {
        public Work {
            after = List.copyOf(after);
            if (setUp.isPresent() && resource.isEmpty()) {
                throw new IllegalArgumentException("A set-up without a machine: " + name);
            }
        }
    }

    /**
     * A machine brought to a setting. The machine is the resource of the works that need it.
     *
     * @param name such as 10° at 20 mm on the band saw; equal names are one set-up
     * @param minutes to set up once
     */
    public record SetUp(String name, int minutes) {}

    /**
     * Waiting for another work.
     *
     * @param work index of the other
     * @param atLeast from its end to the start of this one; zero or a cure
     * @param atMost from its end to the start of this one; empty when it can wait
     * @param sameDay this one starts on the day the other is done
     */
    public record After(int work, Duration atLeast, Optional<Duration> atMost, boolean sameDay) {
        public static After endOf(int work) {
            return new After(work, Duration.ZERO, Optional.empty(), false);
        }

        public static After cure(int work, Duration cure) {
            return new After(work, cure, Optional.empty(), false);
        }
    }

    /**
     * One of a resource stays occupied, unattended, from the start of one work to the end of another.
     *
     * @param resource index
     * @param first index of a work; empty when it is occupied from the beginning
     * @param last index of a work
     */
    public record Hold(int resource, Optional<Integer> first, int last) {}

    /**
     * Something wanted, such as a neck.
     *
     * @param work index of the work it is done with
     * @param due it should be done by then
     * @param weight what being late counts, at least 1
     */
    public record Goal(String name, int work, Instant due, int weight) {}
}
