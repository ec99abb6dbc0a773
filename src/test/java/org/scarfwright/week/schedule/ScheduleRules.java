package org.scarfwright.week.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.scarfwright.week.schedule.Schedule.Level;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.Schedule.Placed;
import org.scarfwright.week.schedule.Schedule.SetUpMade;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Goal;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;
import org.scarfwright.week.schedule.ScheduleProblem.Work;

/** Every rule of a schedule, read from the problem's Javadoc in instants; shares no code with the searches. */
final class ScheduleRules {
    private record Span(Instant from, Instant to) {}

    private ScheduleRules() {}

    static void hold(ScheduleProblem problem, Schedule schedule) {
        List<Span> handsOn = new ArrayList<>();
        Map<Integer, List<Span>> used = new HashMap<>();
        for (int w = 0; w < problem.works().size(); w++) {
            Work work = problem.works().get(w);
            Placed at = schedule.placed().get(w);
            assertThat(Duration.between(at.start(), at.end()))
                    .isGreaterThanOrEqualTo(Duration.ofMinutes(work.minutes()));
            Hours hours = hoursOf(problem, at);
            work.notBefore().ifPresent(i -> assertThat(at.start()).isAfterOrEqualTo(i));
            work.day().ifPresent(d -> assertThat(hours.day()).isEqualTo(d));
            handsOn.add(new Span(at.start(), at.end()));
            Span span = new Span(at.start(), at.end());
            work.resource().ifPresent(r -> {
                if (work.setUp().isEmpty()) {
                    used.computeIfAbsent(r, k -> new ArrayList<>()).add(span);
                }
            });
            work.setUp()
                    .ifPresent(s -> assertThat(schedule.setUps())
                            .as("set up for " + work.name())
                            .filteredOn(m -> m.name().equals(s.name())
                                    && !m.ready().isAfter(at.start())
                                    && !m.end().isBefore(at.end()))
                            .hasSize(1));
            for (After a : work.after()) {
                Placed other = schedule.placed().get(a.work());
                Duration wait = Duration.between(other.end(), at.start());
                assertThat(wait).as(work.name()).isGreaterThanOrEqualTo(a.atLeast());
                a.atMost().ifPresent(most -> assertThat(wait).as(work.name()).isLessThanOrEqualTo(most));
                if (a.sameDay()) {
                    assertThat(hours.day())
                            .as(work.name())
                            .isEqualTo(hoursOf(problem, other).day());
                }
            }
        }
        for (SetUpMade m : schedule.setUps()) {
            Work any = problem.works().stream()
                    .filter(w ->
                            w.setUp().filter(s -> s.name().equals(m.name())).isPresent())
                    .findFirst()
                    .orElseThrow();
            assertThat(any.resource()).contains(m.resource());
            assertThat(Duration.between(m.start(), m.ready()))
                    .isGreaterThanOrEqualTo(
                            Duration.ofMinutes(any.setUp().orElseThrow().minutes()));
            assertThat(m.start())
                    .as("set up in shop hours")
                    .isAfterOrEqualTo(hoursAt(problem, m.end()).from());
            used.computeIfAbsent(m.resource(), k -> new ArrayList<>()).add(new Span(m.start(), m.end()));
            handsOn.add(new Span(m.start(), m.ready()));
        }
        for (Hold h : problem.holds()) {
            Instant from = h.first().map(f -> schedule.placed().get(f).start()).orElse(problem.from());
            used.computeIfAbsent(h.resource(), k -> new ArrayList<>())
                    .add(new Span(from, schedule.placed().get(h.last()).end()));
        }
        used.forEach((r, spans) -> assertThat(most(spans))
                .as(problem.resources().get(r).name())
                .isLessThanOrEqualTo(problem.resources().get(r).count()));
        for (Hours h : problem.hours()) {
            List<Span> here = handsOn.stream()
                    .filter(s -> !s.from().isBefore(h.from()) && s.from().isBefore(h.to()))
                    .toList();
            assertThat(most(here)).as("people on " + h.day()).isLessThanOrEqualTo(h.people());
        }
        levels(problem, schedule);
    }

    private static void levels(ScheduleProblem problem, Schedule schedule) {
        long late = 0;
        for (Goal g : problem.goals()) {
            late += schedule.placed().get(g.work()).end().isAfter(g.due()) ? g.weight() : 0;
        }
        LocalDate last = schedule.placed().stream()
                .map(p -> hoursOf(problem, p).day())
                .max(LocalDate::compareTo)
                .orElseThrow();
        long days = problem.hours().stream()
                .map(Hours::day)
                .distinct()
                .filter(d -> !d.isAfter(last))
                .count();
        Map<Measure, Long> values = Map.of(
                Measure.LATE, late, Measure.SET_UPS, (long) schedule.setUps().size(), Measure.DAYS, days);
        for (Level level : schedule.levels()) {
            assertThat(level.value()).as(level.measure().name()).isEqualTo(values.get(level.measure()));
            assertThat(level.bound()).isLessThanOrEqualTo(level.value());
        }
        assertThat(new HashSet<>(schedule.levels())).hasSize(3);
    }

    private static Hours hoursOf(ScheduleProblem problem, Placed at) {
        Hours hours = hoursAt(problem, at.end());
        assertThat(at.start()).as("in shop hours").isAfterOrEqualTo(hours.from());
        return hours;
    }

    private static Hours hoursAt(ScheduleProblem problem, Instant end) {
        return problem.hours().stream()
                .filter(h -> end.isAfter(h.from()) && !end.isAfter(h.to()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("outside shop hours: " + end));
    }

    /** The most spans that lie over each other anywhere. */
    private static int most(List<Span> spans) {
        int most = 0;
        for (Span s : spans) {
            int here = 0;
            for (Span other : spans) {
                here += !other.from().isAfter(s.from()) && other.to().isAfter(s.from()) ? 1 : 0;
            }
            most = Math.max(most, here);
        }
        return most;
    }
}
