package org.scarfwright.week.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.scarfwright.week.schedule.Schedule.Level;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Goal;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;
import org.scarfwright.week.schedule.ScheduleProblem.Resource;
import org.scarfwright.week.schedule.ScheduleProblem.SetUp;
import org.scarfwright.week.schedule.ScheduleProblem.Work;
import org.scarfwright.week.schedule.UnschedulableException.Reason;

class SchedulerTest {
    private static final Duration LONG = Duration.ofMinutes(2);
    private static final Resource BENCH = new Resource("bench", 1);
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);

    @Test
    void everyRuleHoldsInRandomWeeks() {
        for (int seed = 0; seed < 16; seed++) {
            ScheduleProblem problem = Weeks.necks(2 + 2 * seed, 20, 1 + seed % 2, 2 + seed % 3, seed);
            ScheduleRules.hold(problem, new GreedyScheduler().lay(problem, LONG, () -> false));
        }
    }

    @Test
    void theExactSearchProvesSmallWeeksAndBreaksNoRule() {
        for (int seed = 0; seed < 5; seed++) {
            ScheduleProblem problem = Weeks.necks(2 + 2 * seed, 20, 1 + seed % 2, 2 + seed % 3, seed);
            Schedule greedy = new GreedyScheduler().lay(problem, LONG, () -> false);
            Schedule exact = new CpSatScheduler().lay(problem, LONG, () -> false);

            ScheduleRules.hold(problem, exact);
            assertThat(exact.proved()).as("seed %d", seed).isTrue();
            for (int m = 0; m < Measure.values().length; m++) {
                Level best = exact.levels().get(m);
                assertThat(greedy.levels().get(m).bound())
                        .as("seed %d: the greedy bound holds for the best", seed)
                        .isLessThanOrEqualTo(best.value());
            }
        }
    }

    @Test
    void theSameProblemGivesTheSameSchedule() {
        ScheduleProblem problem = Weeks.necks(4, 20, 1, 2, 3);

        assertThat(new CpSatScheduler().lay(problem, LONG, () -> false))
                .isEqualTo(new CpSatScheduler().lay(problem, LONG, () -> false));
    }

    /** Two cuts of one set-up, parted by one of another where the due days leave no choice, take three set-ups; else two. */
    @Test
    void dueDaysComeBeforeFewSetUps() {
        SetUp ten = new SetUp("10°", 30);
        SetUp thirteen = new SetUp("13°", 30);
        List<Work> works = List.of(cut("first", ten), cut("second", thirteen), cut("third", ten));
        Instant firstDay = MONDAY.atTime(17, 0).atZone(Weeks.ZONE).toInstant();
        Instant later = MONDAY.plusDays(10).atTime(17, 0).atZone(Weeks.ZONE).toInstant();

        // A day of nine hours takes one cut of four hours with its set-up, or two that share it.
        Schedule pressed = new CpSatScheduler()
                .lay(problem(works, List.of(goal(0, firstDay), goal(1, later), goal(2, later))), LONG, () -> false);
        assertThat(values(pressed)).containsExactly(0L, 2L, 2L);
        Schedule together = new CpSatScheduler()
                .lay(
                        problem(
                                works,
                                List.of(goal(0, firstDay), goal(1, firstDay.plus(Duration.ofDays(1))), goal(2, later))),
                        LONG,
                        () -> false);
        assertThat(values(together)).containsExactly(0L, 2L, 2L);
        Schedule parted = new CpSatScheduler()
                .lay(problem(works, List.of(goal(0, firstDay), goal(1, firstDay), goal(2, later))), LONG, () -> false);
        assertThat(values(parted)).containsExactly(0L, 3L, 2L);
        assertThat(pressed.proved() && together.proved() && parted.proved()).isTrue();
    }

    /** On 25 October 2026 clocks in Berlin go back from three to two: the night is an hour longer than the wall says. */
    @Test
    void aCureLastsAsLongOverANightInWhichTheClocksChange() {
        LocalDate saturday = LocalDate.of(2026, 10, 24);
        List<Hours> hours = List.of(hours(saturday, 16, 18), hours(saturday.plusDays(1), 7, 12));
        ScheduleProblem problem = new ScheduleProblem(
                hours.get(0).from(),
                hours,
                List.of(BENCH),
                List.of(
                        Weeks.work("glue", 15, 0, List.of()),
                        Weeks.work("unclamp", 10, 0, List.of(After.cure(0, Duration.ofHours(16))))),
                List.of(),
                List.of());

        Schedule schedule = new CpSatScheduler().lay(problem, LONG, () -> false);

        assertThat(schedule.placed().get(1).start())
                .isEqualTo(saturday.plusDays(1).atTime(7, 15).atZone(Weeks.ZONE).toInstant());
    }

    @Test
    void saysWhichWorkFindsNoTimeAndWhy() {
        List<Work> glued = List.of(
                Weeks.work("glue", 15, 0, List.of()),
                Weeks.work("unclamp", 10, 0, List.of(After.cure(0, Duration.ofHours(12)))));
        List<Hold> clamped = List.of(new Hold(1, Optional.of(0), 1));

        refuses(week(glued, clamped, List.of(BENCH, new Resource("clamps", 0)), 5), 1, Reason.NOTHING_TO_DO_IT_WITH);
        refuses(
                week(List.of(Weeks.work("flatten", 541, 0, List.of())), List.of(), List.of(BENCH), 5),
                0,
                Reason.LONGER_THAN_A_DAY);
        refuses(week(glued, List.of(), List.of(BENCH), 1), 1, Reason.NO_TIME_LEFT);
        assertThat(new GreedyScheduler()
                        .lay(
                                week(List.of(Weeks.work("flatten", 540, 0, List.of())), List.of(), List.of(BENCH), 1),
                                LONG,
                                () -> false)
                        .placed())
                .hasSize(1);
    }

    @Test
    void clampsInUseFromTheBeginningAreFreeAfterTheyAreOpened() {
        List<Work> works = List.of(
                new Work(
                        "unclamp yesterday's",
                        10,
                        Optional.of(0),
                        Optional.empty(),
                        List.of(),
                        Optional.of(MONDAY.atTime(12, 0).atZone(Weeks.ZONE).toInstant()),
                        Optional.empty()),
                Weeks.work("glue", 15, 0, List.of()),
                Weeks.work("unclamp", 10, 0, List.of(After.cure(1, Duration.ofHours(3)))));
        List<Hold> holds = List.of(new Hold(1, Optional.empty(), 0), new Hold(1, Optional.of(1), 2));
        ScheduleProblem problem = week(works, holds, List.of(BENCH, new Resource("clamps", 1)), 3);

        for (Scheduler scheduler : List.of(new GreedyScheduler(), new CpSatScheduler())) {
            Schedule schedule = scheduler.lay(problem, LONG, () -> false);
            ScheduleRules.hold(problem, schedule);
            assertThat(schedule.placed().get(1).start())
                    .isAfterOrEqualTo(MONDAY.atTime(12, 10).atZone(Weeks.ZONE).toInstant());
        }
    }

    private static void refuses(ScheduleProblem problem, int work, Reason reason) {
        for (Scheduler scheduler : List.of(new GreedyScheduler(), new CpSatScheduler())) {
            assertThatExceptionOfType(UnschedulableException.class)
                    .isThrownBy(() -> scheduler.lay(problem, LONG, () -> false))
                    .satisfies(e -> assertThat(e.work()).isEqualTo(work))
                    .satisfies(e -> assertThat(e.reason()).isEqualTo(reason));
        }
    }

    private static List<Long> values(Schedule schedule) {
        return schedule.levels().stream().map(Level::value).toList();
    }

    private static Work cut(String name, SetUp setUp) {
        return new Work(name, 240, Optional.of(0), Optional.of(setUp), List.of(), Optional.empty(), Optional.empty());
    }

    private static Goal goal(int work, Instant due) {
        return new Goal("neck " + work, work, due, 1);
    }

    private static ScheduleProblem problem(List<Work> works, List<Goal> goals) {
        List<Hours> hours = Weeks.hours(MONDAY, 10, 1);
        return new ScheduleProblem(
                hours.get(0).from(), hours, List.of(new Resource("band saw", 1)), works, List.of(), goals);
    }

    private static ScheduleProblem week(List<Work> works, List<Hold> holds, List<Resource> resources, int days) {
        List<Hours> hours = Weeks.hours(MONDAY, days, 1);
        return new ScheduleProblem(hours.get(0).from(), hours, resources, works, holds, List.of());
    }

    private static Hours hours(LocalDate day, int from, int to) {
        return new Hours(
                day,
                day.atTime(from, 0).atZone(Weeks.ZONE).toInstant(),
                day.atTime(to, 0).atZone(Weeks.ZONE).toInstant(),
                1);
    }
}
