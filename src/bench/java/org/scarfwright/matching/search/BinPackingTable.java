package org.scarfwright.matching.search;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;

/** Packs the published classes of bin-packing problems with the search and prints a row for each size and class. */
final class BinPackingTable {
    private static final Duration WALL = Duration.ofMinutes(10);
    private static final int[] SIZES = {60, 120, 249, 501};

    private BinPackingTable() {}

    /**
     * @param args seeds of each row, 5 when left out, then the seconds of processor time for each problem, 30 when left out,
     *     then the most items
     */
    public static void main(String[] args) {
        int seeds = args.length > 0 ? Integer.parseInt(args[0]) : 5;
        long budget = (args.length > 1 ? Long.parseLong(args[1]) : 30) * 1_000_000_000L;
        int most = args.length > 2 ? Integer.parseInt(args[2]) : 501;
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        new OrToolsSearch().solve(BinPacking.uniform(60, 900).problem(), Duration.ofSeconds(3), () -> false);
        out.println(
                "| class, items | optimal and proved | bins above the optimum, worst | processor s median / worst | load |");
        out.println("|---|---|---|---|---|");
        for (boolean uniform : new boolean[] {true, false}) {
            for (int items : SIZES) {
                if (items <= most) {
                    row(out, uniform, items, seeds, budget);
                }
            }
        }
    }

    private static void row(PrintStream out, boolean uniform, int items, int seeds, long budget) {
        double[] seconds = new double[seeds];
        int proved = 0;
        long worst = 0;
        for (int seed = 0; seed < seeds; seed++) {
            BinPacking packing = uniform ? BinPacking.uniform(items, seed) : BinPacking.triplets(items, seed);
            int fewest = uniform ? packing.leastBins() : items / 3;
            SearchProblem problem = packing.problem();
            long thread = Thread.currentThread().getId();
            long start = processor(thread);
            SearchResult result = new OrToolsSearch()
                    .solve(
                            problem,
                            WALL,
                            new BinPacking.UntilProved(problem, () -> processor(thread) - start > budget));
            seconds[seed] = (processor(thread) - start) / 1e9;
            CutPlan plan = CutPlan.of(problem, result.layouts(), result.pairs());
            long missing = problem.orderedWeight() - plan.value(SearchResult.Measure.FILLED);
            long over = plan.value(SearchResult.Measure.BOOK_VALUE) / BinPacking.CENTS - fewest;
            worst = Math.max(worst, over);
            proved += missing == 0 && over == 0 && result.levels().get(1).proved() ? 1 : 0;
        }
        Arrays.sort(seconds);
        out.printf(
                Locale.ROOT,
                "| %s, %d | %d/%d | %d | %.2f / %.2f | %.1f |%n",
                uniform ? "uniform" : "triplets",
                items,
                proved,
                seeds,
                worst,
                (seconds[seeds / 2] + seconds[(seeds - 1) / 2]) / 2,
                seconds[seeds - 1],
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    private static long processor(long thread) {
        return ManagementFactory.getThreadMXBean().getThreadCpuTime(thread);
    }
}
