package org.scarfwright.week.schedule;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.week.schedule.Schedule.Level;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.Schedule.Placed;
import org.scarfwright.week.schedule.Schedule.SetUpMade;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;
import org.scarfwright.week.schedule.ScheduleProblem.Work;
import org.scarfwright.week.schedule.UnschedulableException.Reason;

/** A problem in whole slots. */
final class Slots {
    static final int MINUTES = 5;
    private static final long SECONDS = MINUTES * 60L;

    /** Shop hours in slots; {@code to} is the first slot after them. */
    record Open(int day, int from, int to, int people) {}

    final ScheduleProblem problem;
    final List<LocalDate> days;
    final List<Open> open = new ArrayList<>();
    final int end;
    final int most;
    private final int[] size;

    Slots(ScheduleProblem problem) {
        this.problem = problem;
        days = problem.hours().stream().map(Hours::day).distinct().sorted().toList();
        int last = 0;
        int people = 0;
        for (Hours h : problem.hours()) {
            int from = Math.max(0, ceil(seconds(h.from())));
            int to = floor(seconds(h.to()));
            if (from < to) {
                open.add(new Open(days.indexOf(h.day()), from, to, h.people()));
                last = Math.max(last, to);
                people = Math.max(people, h.people());
            }
        }
        end = last;
        most = people;
        size = problem.works().stream().mapToInt(w -> ceil(w.minutes() * 60L)).toArray();
        for (int w = 0; w < size.length; w++) {
            check(w);
        }
    }

    private void check(int w) {
        Work work = problem.works().get(w);
        boolean missing =
                work.resource().map(r -> problem.resources().get(r).count() < 1).orElse(false)
                        || problem.holds().stream()
                                .anyMatch(h -> h.last() == w
                                        && problem.resources().get(h.resource()).count() < 1);
        if (missing) {
            throw new UnschedulableException(problem, w, Reason.NOTHING_TO_DO_IT_WITH);
        }
        if (starts(w).isEmpty()) {
            boolean fits = open.stream().anyMatch(o -> o.to() - o.from() >= size[w] + setUp(w));
            throw new UnschedulableException(problem, w, fits ? Reason.NO_TIME_LEFT : Reason.LONGER_THAN_A_DAY);
        }
    }

    int size(int work) {
        return size[work];
    }

    /** Slots to bring the machine to the work's set-up; 0 when it needs none. */
    int setUp(int work) {
        return problem.works()
                .get(work)
                .setUp()
                .map(s -> ceil(s.minutes() * 60L))
                .orElse(0);
    }

    /** First and last slot a work may start at in one stretch of hours. */
    record Range(int stretch, int first, int last) {}

    /** Where the work may start; setting up for it lies in the same stretch. */
    List<Range> starts(int work) {
        Work w = problem.works().get(work);
        int notBefore = Math.max(0, w.notBefore().map(i -> ceil(seconds(i))).orElse(0));
        List<Range> starts = new ArrayList<>();
        for (int i = 0; i < open.size(); i++) {
            Open o = open.get(i);
            if (w.day().isPresent() && !w.day().get().equals(days.get(o.day()))) {
                continue;
            }
            int first = Math.max(o.from() + setUp(work), notBefore);
            int last = o.to() - size[work];
            if (first <= last) {
                starts.add(new Range(i, first, last));
            }
        }
        return starts;
    }

    int atLeast(After after) {
        return ceil(after.atLeast().toSeconds());
    }

    int atMost(After after) {
        return after.atMost().map(d -> floor(d.toSeconds())).orElse(Integer.MAX_VALUE);
    }

    /** The last slot boundary not after the due instant. */
    int due(int goal) {
        return floor(seconds(problem.goals().get(goal).due()));
    }

    Instant at(int slot) {
        return problem.from().plusSeconds(slot * SECONDS);
    }

    /** Names of all set-ups, in order of the works. */
    List<String> setUps() {
        return problem.works().stream()
                .flatMap(w -> w.setUp().stream())
                .map(ScheduleProblem.SetUp::name)
                .distinct()
                .toList();
    }

    /** The stretch of hours a slot is in. */
    int stretch(int slot) {
        for (int i = 0; i < open.size(); i++) {
            if (open.get(i).from() <= slot && slot < open.get(i).to()) {
                return i;
            }
        }
        throw new IllegalStateException("A work lies outside shop hours");
    }

    /** A schedule in instants, each value with the bound known for it. */
    Schedule schedule(Laid laid, Map<Measure, Long> bounds, String engine) {
        List<Placed> placed = new ArrayList<>();
        for (int w = 0; w < laid.start().length; w++) {
            placed.add(new Placed(at(laid.start()[w]), at(laid.end(this, w))));
        }
        Map<String, Integer> minutes = new HashMap<>();
        for (Work w : problem.works()) {
            w.setUp().ifPresent(s -> minutes.put(s.name(), ceil(s.minutes() * 60L)));
        }
        List<SetUpMade> made = laid.batches().stream()
                .map(b -> new SetUpMade(
                        b.setUp(),
                        b.resource(),
                        at(b.from()),
                        at(b.from() + minutes.getOrDefault(b.setUp(), 0)),
                        at(b.to())))
                .sorted(Comparator.comparing(SetUpMade::start).thenComparing(SetUpMade::name))
                .toList();
        Values values = laid.values(this);
        List<Level> levels = new ArrayList<>();
        for (Measure m : Measure.values()) {
            levels.add(new Level(m, values.of(m), Math.min(values.of(m), bounds.getOrDefault(m, 0L))));
        }
        return new Schedule(placed, made, levels, engine);
    }

    private long seconds(Instant instant) {
        return Duration.between(problem.from(), instant).toSeconds();
    }

    private static int ceil(long seconds) {
        return Math.toIntExact(-Math.floorDiv(-seconds, SECONDS));
    }

    private static int floor(long seconds) {
        return Math.toIntExact(Math.floorDiv(seconds, SECONDS));
    }
}
