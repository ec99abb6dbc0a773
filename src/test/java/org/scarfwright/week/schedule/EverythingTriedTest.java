package org.scarfwright.week.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.week.schedule.Schedule.Level;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Goal;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;
import org.scarfwright.week.schedule.ScheduleProblem.Resource;
import org.scarfwright.week.schedule.ScheduleProblem.SetUp;
import org.scarfwright.week.schedule.ScheduleProblem.Work;

/**
 * What the exact search calls proved, against trying every start of every work and of every set-up in weeks of a few short
 * stretches. The trying shares no code with the searches: it reads the rules from the problem's Javadoc.
 */
class EverythingTriedTest {
    private static final Instant MORNING = Instant.parse("2026-11-30T08:00:00Z");
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
    private static final int STEP = 5;
    private static final int PEOPLE = -1;

    @Test
    void provesWhatTryingEverythingFinds() {
        int possible = 0;
        int worse = 0;
        for (int seed = 0; seed < 60; seed++) {
            ScheduleProblem problem = tiny(seed);
            Tried tried = new Tried(problem);
            tried.work(0);
            int[] best = tried.best;
            if (best == null) {
                continue;
            }
            possible++;
            Schedule exact;
            try {
                exact = new CpSatScheduler().lay(problem, Duration.ofMinutes(1), () -> false);
            } catch (UnschedulableException e) {
                // The greedy schedule it begins with found none; it has not said that there is one.
                continue;
            }
            ScheduleRules.hold(problem, exact);
            assertThat(exact.levels().stream().map(Level::value).toList())
                    .as("seed %d", seed)
                    .isEqualTo(List.of((long) best[0], (long) best[1], (long) best[2]));
            assertThat(exact.proved()).as("seed %d", seed).isTrue();
            Schedule greedy = new GreedyScheduler().lay(problem, Duration.ofMinutes(1), () -> false);
            worse += Schedule.BY_VALUES.compare(exact, greedy) < 0 ? 1 : 0;
            assertThat(greedy.levels().get(0).bound()).isLessThanOrEqualTo(best[0]);
        }
        assertThat(possible).isGreaterThan(40);
        assertThat(worse).as("weeks in which there was something to search").isGreaterThan(2);
    }

    /** Two necks of a cut, a glueing and an opening of the clamps, in stretches of half an hour or so. */
    private static ScheduleProblem tiny(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Hours> hours = new ArrayList<>();
        boolean halves = random.nextBoolean();
        for (int d = 0; d < 3; d++) {
            for (int half = 0; half < (halves ? 2 : 1); half++) {
                Instant from = MORNING.plus(Duration.ofMinutes(d * 240L + half * 60L));
                int minutes = halves ? 15 + STEP * random.nextInt(2) : 25 + STEP * random.nextInt(3);
                hours.add(new Hours(MONDAY.plusDays(d), from, from.plus(Duration.ofMinutes(minutes)), 1));
            }
        }
        List<Work> works = new ArrayList<>();
        List<Hold> holds = new ArrayList<>();
        List<Goal> goals = new ArrayList<>();
        int cure = STEP * random.nextInt(6);
        for (int n = 0; n < 2; n++) {
            works.add(new Work(
                    "cut " + n,
                    STEP + STEP * random.nextInt(2),
                    Optional.of(0),
                    Optional.of(new SetUp(random.nextInt(3) == 0 ? "13°" : "10°", STEP)),
                    List.of(),
                    Optional.empty(),
                    Optional.empty()));
            int cut = works.size() - 1;
            works.add(new Work(
                    "glue " + n,
                    STEP + STEP * random.nextInt(2),
                    Optional.empty(),
                    Optional.empty(),
                    List.of(new After(cut, Duration.ZERO, Optional.empty(), random.nextInt(3) == 0)),
                    Optional.empty(),
                    Optional.empty()));
            works.add(new Work(
                    "open " + n,
                    STEP,
                    Optional.empty(),
                    Optional.empty(),
                    List.of(After.cure(cut + 1, Duration.ofMinutes(cure))),
                    Optional.empty(),
                    Optional.empty()));
            holds.add(new Hold(1, Optional.of(cut + 1), cut + 2));
            Hours due = hours.get(random.nextInt(hours.size()));
            goals.add(new Goal("neck " + n, cut + 2, due.to(), 1 + random.nextInt(2)));
        }
        return new ScheduleProblem(
                MORNING, hours, List.of(new Resource("saw", 1), new Resource("clamps", 1)), works, holds, goals);
    }

    /** Tries every start of every work, then every start of every set-up that needs. */
    private static final class Tried {
        private record Span(int resource, int from, int to) {}

        private final ScheduleProblem problem;
        private final int[] start;
        private final int[] stretch;
        int @Nullable [] best;

        Tried(ScheduleProblem problem) {
            this.problem = problem;
            start = new int[problem.works().size()];
            stretch = new int[start.length];
        }

        private static int minutes(Instant at) {
            return (int) Duration.between(MORNING, at).toMinutes();
        }

        private int end(int w) {
            return start[w] + problem.works().get(w).minutes();
        }

        void work(int w) {
            if (w == start.length) {
                setUps();
                return;
            }
            for (int s = 0; s < problem.hours().size(); s++) {
                Hours h = problem.hours().get(s);
                for (int at = minutes(h.from()); at + problem.works().get(w).minutes() <= minutes(h.to()); at += STEP) {
                    start[w] = at;
                    stretch[w] = s;
                    if (fits(w)) {
                        work(w + 1);
                    }
                }
            }
        }

        private LocalDate day(int w) {
            return problem.hours().get(stretch[w]).day();
        }

        /** One person does one work at a time, and each waits for what it must. */
        private boolean fits(int w) {
            for (int v = 0; v < w; v++) {
                if (start[v] < end(w) && start[w] < end(v)) {
                    return false;
                }
            }
            for (After a : problem.works().get(w).after()) {
                if (start[w] < end(a.work()) + a.atLeast().toMinutes()
                        || (a.sameDay() && !day(w).equals(day(a.work())))) {
                    return false;
                }
            }
            return true;
        }

        private void setUps() {
            int late = 0;
            int days = 0;
            Set<String> made = new HashSet<>();
            for (Goal g : problem.goals()) {
                late += end(g.work()) > minutes(g.due()) ? g.weight() : 0;
            }
            for (int w = 0; w < start.length; w++) {
                days = Math.max(days, (int) (day(w).toEpochDay() - MONDAY.toEpochDay()) + 1);
                int s = stretch[w];
                problem.works().get(w).setUp().ifPresent(x -> made.add(s + " " + x.name()));
            }
            int[] value = {late, made.size(), days};
            if (best != null && Arrays.compare(value, best) >= 0) {
                return;
            }
            List<Span> spans = new ArrayList<>();
            for (Hold h : problem.holds()) {
                spans.add(new Span(h.resource(), start[h.first().orElseThrow()], end(h.last())));
            }
            for (int w = 0; w < start.length; w++) {
                spans.add(new Span(PEOPLE, start[w], end(w)));
            }
            if (free(spans) && setUp(new ArrayList<>(made), spans)) {
                best = value;
            }
        }

        private boolean setUp(List<String> made, List<Span> spans) {
            if (made.isEmpty()) {
                return true;
            }
            String one = made.get(0);
            int s = Integer.parseInt(one.substring(0, one.indexOf(' ')));
            String name = one.substring(one.indexOf(' ') + 1);
            int first = Integer.MAX_VALUE;
            int last = 0;
            for (int w = 0; w < start.length; w++) {
                if (stretch[w] == s
                        && problem.works()
                                .get(w)
                                .setUp()
                                .filter(x -> x.name().equals(name))
                                .isPresent()) {
                    first = Math.min(first, start[w]);
                    last = Math.max(last, end(w));
                }
            }
            for (int at = minutes(problem.hours().get(s).from()); at + STEP <= first; at += STEP) {
                List<Span> with = new ArrayList<>(spans);
                with.add(new Span(PEOPLE, at, at + STEP));
                with.add(new Span(0, at, last));
                if (free(with) && setUp(made.subList(1, made.size()), with)) {
                    return true;
                }
            }
            return false;
        }

        private static boolean free(List<Span> spans) {
            for (int i = 0; i < spans.size(); i++) {
                Span a = spans.get(i);
                for (Span b : spans.subList(0, i)) {
                    if (a.resource() == b.resource() && a.from() < b.to() && b.from() < a.to()) {
                        return false;
                    }
                }
            }
            return true;
        }
    }
}
