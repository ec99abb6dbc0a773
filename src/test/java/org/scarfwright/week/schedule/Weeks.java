package org.scarfwright.week.schedule;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Goal;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;
import org.scarfwright.week.schedule.ScheduleProblem.Resource;
import org.scarfwright.week.schedule.ScheduleProblem.SetUp;
import org.scarfwright.week.schedule.ScheduleProblem.Work;

/** Invented weeks of necks, the same for the same seed. */
final class Weeks {
    static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    static final int PLANER = 0;
    static final int SAW = 1;
    static final int BENCH = 2;
    static final int CLAMPS = 3;

    private Weeks() {}

    /** Shop hours from eight to five on so many working days, Saturdays and Sundays free. */
    static List<Hours> hours(LocalDate first, int days, int people) {
        List<Hours> hours = new ArrayList<>();
        for (LocalDate day = first; hours.size() < days; day = day.plusDays(1)) {
            if (day.getDayOfWeek() != DayOfWeek.SATURDAY && day.getDayOfWeek() != DayOfWeek.SUNDAY) {
                hours.add(new Hours(
                        day,
                        day.atTime(LocalTime.of(8, 0)).atZone(ZONE).toInstant(),
                        day.atTime(LocalTime.of(17, 0)).atZone(ZONE).toInstant(),
                        people));
            }
        }
        return hours;
    }

    static ScheduleProblem necks(int count, int days, int people, int clamps, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        LocalDate monday = LocalDate.of(2026, 11, 30);
        List<Hours> hours = hours(monday, days, people);
        List<Work> works = new ArrayList<>();
        List<Hold> holds = new ArrayList<>();
        List<Goal> goals = new ArrayList<>();
        String[] setUps = {"10° at 20 mm", "10° at 15 mm", "13° at 22 mm", "13° at 15 mm", "15° at 20 mm"};
        for (int n = 0; n < count; n++) {
            String neck = "neck " + n + ": ";
            int[] trued = new int[2];
            for (int part = 0; part < 2; part++) {
                works.add(work(neck + "flatten", 15 + 5 * random.nextInt(3), PLANER, List.of()));
                SetUp setUp = new SetUp(setUps[random.nextInt(setUps.length)], 20);
                works.add(new Work(
                        neck + "cut",
                        5 + 5 * random.nextInt(2),
                        Optional.of(SAW),
                        Optional.of(setUp),
                        List.of(After.endOf(works.size() - 1)),
                        Optional.empty(),
                        Optional.empty()));
                works.add(work(neck + "true", 10, BENCH, List.of(After.endOf(works.size() - 1))));
                trued[part] = works.size() - 1;
            }
            Optional<Duration> hour = random.nextInt(4) == 0 ? Optional.of(Duration.ofHours(1)) : Optional.empty();
            works.add(work(
                    neck + "fit",
                    15,
                    BENCH,
                    List.of(
                            new After(trued[0], Duration.ZERO, Optional.empty(), true),
                            new After(trued[1], Duration.ZERO, Optional.empty(), true))));
            int fitted = works.size() - 1;
            works.add(work(neck + "glue", 15, BENCH, List.of(new After(fitted, Duration.ZERO, hour, true))));
            int glued = works.size() - 1;
            works.add(work(neck + "unclamp", 10, BENCH, List.of(After.cure(glued, Duration.ofHours(12)))));
            holds.add(new Hold(CLAMPS, Optional.of(glued), works.size() - 1));
            LocalDate due = monday.plusDays(3 + random.nextInt(Math.max(1, days)));
            goals.add(new Goal(
                    "neck " + n,
                    works.size() - 1,
                    due.atTime(17, 0).atZone(ZONE).toInstant(),
                    1 + random.nextInt(3)));
        }
        return new ScheduleProblem(
                hours.get(0).from(),
                hours,
                List.of(
                        new Resource("planer", 1),
                        new Resource("band saw", 1),
                        new Resource("bench", 2),
                        new Resource("clamps", clamps)),
                works,
                holds,
                goals);
    }

    static Work work(String name, int minutes, int resource, List<After> after) {
        return new Work(
                name, minutes, Optional.of(resource), Optional.empty(), after, Optional.empty(), Optional.empty());
    }
}
