package org.scarfwright.matching.search;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Level;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.SegmentUse;
import org.scarfwright.matching.search.SearchResult.Status;

/**
 * Solves seeded racks of growing size with every way there is, one process for each row, and prints the tables of
 * {@code src/docs/benchmarks.md}. How to run it stands in DEVELOPERS.md.
 *
 * <p>Processor time is that of the searching thread, which the native solvers share; on a busy machine it says more than the
 * clock on the wall.
 */
final class SpeedTable {
    /**
     * @param heapMb heap of the row's process
     * @param seconds limit of each search, in processor time
     */
    private record Row(RackGenerator.Size size, int heapMb, int seconds) {
        String name() {
            return String.format(
                    Locale.ROOT, "%d/%d %s", size.pieces(), size.orders(), size.varied() ? "varied" : "small");
        }
    }

    /** What one search of one rack gave. */
    private record Run(
            long filled,
            long filledBound,
            long cents,
            long centsBound,
            long pieces,
            double wasteMetres,
            boolean proved,
            double wall,
            double processor,
            double first,
            double load) {
        boolean bounded() {
            return centsBound > Long.MIN_VALUE;
        }

        /** Gap of the first level that is not proved, in percent of its value. */
        double gap() {
            return filled < filledBound
                    ? 100.0 * (filledBound - filled) / Math.max(1, filledBound)
                    : 100.0 * (cents - centsBound) / Math.max(1, Math.abs(cents));
        }
    }

    /** Wall time may be so many times the limit: the limit is processor time, and the machine may be busy. */
    private static final int WALL = 10;

    private static final List<Row> ROWS = List.of(
            row(60, 10, true, 512, 30),
            row(60, 10, false, 512, 30),
            row(300, 30, true, 1024, 10),
            row(300, 30, false, 1024, 10),
            row(2_000, 200, true, 1024, 60),
            row(2_000, 200, false, 1024, 60),
            row(10_000, 1_000, true, 1024, 60),
            row(10_000, 1_000, false, 1024, 60),
            row(100_000, 1_000, true, 3072, 120),
            row(100_000, 1_000, false, 3072, 120));

    private static Row row(int pieces, int orders, boolean varied, int heapMb, int seconds) {
        return new Row(new RackGenerator.Size(pieces, orders, varied), heapMb, seconds);
    }

    /** Notes when there is a plan at all, and stops when the searching thread has had its processor time. */
    private static final class Stopwatch implements SearchWatch {
        private final long thread = Thread.currentThread().getId();
        private final long start = processor();
        private final long budget;
        double seconds = Double.NaN;

        Stopwatch(Duration budget) {
            this.budget = budget.toNanos();
        }

        long processor() {
            return ManagementFactory.getThreadMXBean().getThreadCpuTime(thread) - start;
        }

        @Override
        public boolean stopped() {
            return processor() > budget;
        }

        @Override
        public void progress(SearchProgress progress) {
            if (Double.isNaN(seconds) && progress.necks() > 0) {
                seconds = progress.seconds();
            }
        }
    }

    private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    private final Map<String, MatchSearch> ways = new LinkedHashMap<>();

    private SpeedTable() {}

    /**
     * @param args {@code rows=60/10,300/30 sorts=varied,small seeds=20 first=0 ways=ours,hand,java,compact limit=30}; what is
     *     left out takes everything, 5 seeds and the limit of each row
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        Map<String, String> options = new LinkedHashMap<>();
        for (String arg : String.join(" ", args).trim().split("\\s+", -1)) {
            int at = arg.indexOf('=');
            if (at > 0) {
                options.put(arg.substring(0, at), arg.substring(at + 1));
            }
        }
        if (options.containsKey("alone")) {
            new SpeedTable().measure(ROWS.get(Integer.parseInt(options.get("alone"))), options);
            return;
        }
        System.out.printf(
                "%s, %d processors, %s %s, load %.1f at the start%n%n",
                LocalDate.now(Clock.systemUTC()),
                Runtime.getRuntime().availableProcessors(),
                System.getProperty("java.vm.name"),
                System.getProperty("java.version"),
                load());
        System.out.println(
                "| rack, search | solved | filled | book value | pieces | waste m | proved | gap % median / worst"
                        + " | wall s median / worst | processor s median / worst | first plan s | peak MB | load |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|---|");
        for (int r = 0; r < ROWS.size(); r++) {
            if (wanted(ROWS.get(r), options)) {
                inOwnProcess(r, options);
            }
        }
    }

    private static boolean wanted(Row row, Map<String, String> options) {
        String size = row.size().pieces() + "/" + row.size().orders();
        String sort = row.size().varied() ? "varied" : "small";
        return List.of(options.getOrDefault("rows", size).split(",")).contains(size)
                && List.of(options.getOrDefault("sorts", sort).split(",")).contains(sort);
    }

    private static void inOwnProcess(int row, Map<String, String> options) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + ROWS.get(row).heapMb() + "m",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                SpeedTable.class.getName(),
                "alone=" + row));
        options.forEach((k, v) -> command.add(k + "=" + v));
        int code = new ProcessBuilder(command).inheritIO().start().waitFor();
        if (code != 0) {
            System.out.println("| " + ROWS.get(row).name() + " | ended with " + code + " | | | | | | | | | | | |");
        }
    }

    private void measure(Row row, Map<String, String> options) throws IOException {
        ways.put("ours", new OrToolsSearch());
        ways.put("hand", new HandRule());
        ways.put("java", new FallbackSearch());
        ways.put("compact", new CompactSearch());
        List<String> chosen = List.of(
                options.getOrDefault("ways", String.join(",", ways.keySet())).split(","));
        int seeds = Integer.parseInt(options.getOrDefault("seeds", "5"));
        int first = Integer.parseInt(options.getOrDefault("first", "0"));
        Duration limit =
                Duration.ofSeconds(Integer.parseInt(options.getOrDefault("limit", Integer.toString(row.seconds()))));
        // The first searches of a process run before the compiler has seen the code.
        for (int seed = 0; seed < 3; seed++) {
            SearchProblem small = RackGenerator.problem(new RackGenerator.Size(60, 10, true), 900 + seed);
            new OrToolsSearch().solve(small, Duration.ofSeconds(5), () -> false);
        }
        for (String way : chosen) {
            MatchSearch search = ways.get(way);
            if (search == null) {
                throw new IllegalArgumentException("No search is called " + way + "; there are " + ways.keySet());
            }
            List<Run> runs = new ArrayList<>();
            for (int seed = first; seed < first + seeds; seed++) {
                SearchProblem problem = RackGenerator.problem(row.size(), seed);
                Run run = run(search, problem, limit);
                runs.add(run);
                System.err.printf(
                        Locale.ROOT,
                        "%s %s seed %d: filled %d of %d, %d cents, bound %s, %s, wall %.2f s, processor %.2f s, first %.2f s%n",
                        row.name(),
                        way,
                        seed,
                        run.filled(),
                        run.filledBound(),
                        run.cents(),
                        run.bounded() ? run.centsBound() : "none",
                        run.proved() ? "proved" : "open",
                        run.wall(),
                        run.processor(),
                        run.first());
            }
            print(row.name() + ", " + way, runs);
        }
    }

    private static Run run(MatchSearch search, SearchProblem problem, Duration limit) {
        long wall = System.nanoTime();
        Stopwatch watch = new Stopwatch(limit);
        SearchResult result = search.solve(problem, limit.multipliedBy(WALL), watch);
        long processor = watch.processor();
        wall = System.nanoTime() - wall;
        CutPlan.of(problem, result.layouts(), result.pairs());
        Level filled = level(result, Measure.FILLED);
        Level value = level(result, Measure.BOOK_VALUE);
        return new Run(
                filled.value(),
                filled.bound(),
                value.value(),
                value.bound(),
                result.layouts().size(),
                waste(problem, result) / 1e6,
                result.status() == Status.PROVED,
                wall / 1e9,
                processor / 1e9,
                watch.seconds,
                load());
    }

    private static Level level(SearchResult result, Measure measure) {
        return result.levels().stream()
                .filter(l -> l.measure() == measure)
                .findFirst()
                .orElseThrow();
    }

    /** Length of the segments cut that is neither a part's short side nor a rest worth keeping, in micrometres. */
    private static long waste(SearchProblem problem, SearchResult result) {
        long waste = 0;
        for (Layout layout : result.layouts()) {
            SearchProblem.Preparation r =
                    problem.pieces().get(layout.piece()).preparations().get(layout.preparation());
            for (int s = 0; s < r.segments().size(); s++) {
                Segment segment = r.segments().get(s);
                SegmentUse use = layout.segments().get(s);
                long parts = 0;
                long used = 0;
                for (SearchResult.Group g : use.groups()) {
                    for (int n : g.needs()) {
                        parts += problem.needs().get(n).shortUm();
                    }
                    used += r.bevelUm()[problem.needs().get(g.needs().get(0)).angle()] + r.squareKerfUm();
                }
                long rest = segment.restUm(used + parts);
                waste += segment.lengthUm() - parts - (segment.restCents(rest) > 0 ? rest : 0);
            }
        }
        return waste;
    }

    private void print(String name, List<Run> runs) throws IOException {
        double[] wall = runs.stream().mapToDouble(Run::wall).sorted().toArray();
        double[] processor = runs.stream().mapToDouble(Run::processor).sorted().toArray();
        double[] gap = runs.stream().mapToDouble(Run::gap).sorted().toArray();
        double[] first = runs.stream().mapToDouble(Run::first).sorted().toArray();
        long proved = runs.stream().filter(Run::proved).count();
        boolean bounded = runs.stream().allMatch(Run::bounded);
        out.printf(
                Locale.ROOT,
                "| %s | %d | %.1f | %.2f | %.1f | %.2f | %d/%d | %s | %s | %s | %s | %d | %.1f |%n",
                name,
                runs.size(),
                runs.stream().mapToLong(Run::filled).average().orElse(0),
                runs.stream().mapToLong(Run::cents).average().orElse(0) / 100,
                runs.stream().mapToLong(Run::pieces).average().orElse(0),
                runs.stream().mapToDouble(Run::wasteMetres).average().orElse(0),
                proved,
                runs.size(),
                bounded ? twice(gap, "%.3f") : "–",
                twice(wall, "%.2f"),
                twice(processor, "%.2f"),
                twice(first, "%.2f"),
                peakMb(),
                runs.stream().mapToDouble(Run::load).average().orElse(0));
    }

    private static String twice(double[] sorted, String format) {
        if (Double.isNaN(sorted[sorted.length - 1])) {
            return "–";
        }
        double median = (sorted[sorted.length / 2] + sorted[(sorted.length - 1) / 2]) / 2;
        return String.format(Locale.ROOT, format + " / " + format, median, sorted[sorted.length - 1]);
    }

    private static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    /** Most memory the process has held so far, native libraries included; 0 where the system does not tell. */
    private static long peakMb() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.exists(status)) {
            return 0;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmHWM"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElse(0);
    }
}
