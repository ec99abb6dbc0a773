package org.scarfwright.week.schedule;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The table of weeks in {@code src/docs/benchmarks.md}: seeded weeks laid exactly, each within a limit of wall time. Beside wall time
 * stands the processor time of the searching thread: on a busy machine only that can be compared. Arguments, all optional: {@code necks}, {@code seeds}, {@code first}, {@code limit} in seconds, {@code people}, {@code clamps}.
 */
public final class WeekTable {
    private WeekTable() {}

    public static void main(String[] args) {
        CpSatScheduler.usable();
        ThreadMXBean thread = ManagementFactory.getThreadMXBean();
        int necks = argument(args, "necks", 30);
        int people = argument(args, "people", 0);
        int clamps = argument(args, "clamps", 0);
        int first = argument(args, "first", 0);
        Duration limit = Duration.ofSeconds(argument(args, "limit", 10));
        List<Double> seconds = new ArrayList<>();
        int proved = 0;
        int seeds = argument(args, "seeds", 20);
        for (int seed = first; seed < first + seeds; seed++) {
            ScheduleProblem problem = Weeks.necks(
                    necks, 20, people > 0 ? people : 1 + seed % 2, clamps > 0 ? clamps : 2 + seed % 3, seed);
            Schedule greedy = new GreedyScheduler().lay(problem, limit, () -> false);
            long begun = thread.getCurrentThreadCpuTime();
            long begunWall = System.nanoTime();
            Schedule schedule = new CpSatScheduler().lay(problem, limit, () -> false);
            double took = (thread.getCurrentThreadCpuTime() - begun) / 1e9;
            double wall = (System.nanoTime() - begunWall) / 1e9;
            ScheduleRules.hold(problem, schedule);
            seconds.add(took);
            proved += schedule.proved() ? 1 : 0;
            System.out.printf(
                    Locale.ROOT,
                    "seed %2d  greedy %s  exact %s  %.2f s (%.2f s wall)%s%n",
                    seed,
                    words(greedy),
                    words(schedule),
                    took,
                    wall,
                    schedule.proved() ? "" : "  GAP");
        }
        double[] sorted = seconds.stream().mapToDouble(d -> d).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%d necks: %d of %d proved; median %.2f s, worst %.2f s%n",
                necks,
                proved,
                seeds,
                sorted[sorted.length / 2],
                sorted[sorted.length - 1]);
    }

    private static String words(Schedule schedule) {
        return schedule.levels().stream()
                .map(l -> l.proved() ? "" + l.value() : l.value() + "(" + l.bound() + ")")
                .collect(Collectors.joining("/"));
    }

    private static int argument(String[] args, String name, int otherwise) {
        return Arrays.stream(args)
                .filter(a -> a.startsWith(name + "="))
                .mapToInt(a -> Integer.parseInt(a.substring(name.length() + 1)))
                .findFirst()
                .orElse(otherwise);
    }
}
