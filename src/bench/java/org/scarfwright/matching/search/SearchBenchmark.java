package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One whole search at a time, of the small racks that are proved in seconds. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5)
@Measurement(iterations = 10)
public class SearchBenchmark {
    /** Pieces, orders and sort of shop. */
    @Param({"60/10 varied", "60/10 small", "300/30 small"})
    public String rack = "";

    @Param({"0", "1", "2"})
    public int seed;

    private SearchProblem problem = new SearchProblem(List.of(), List.of(), List.of(), 0, 0);

    @Setup
    public void make() {
        String[] words = rack.split("[/ ]", -1);
        problem = RackGenerator.problem(
                new RackGenerator.Size(
                        Integer.parseInt(words[0]), Integer.parseInt(words[1]), words[2].equals("varied")),
                seed);
    }

    @Benchmark
    public SearchResult search() {
        return new OrToolsSearch().solve(problem, Duration.ofMinutes(1), () -> false);
    }

    @Benchmark
    public SearchResult withoutNativeSolver() {
        return new FallbackSearch().solve(problem, Duration.ofMinutes(1), () -> false);
    }
}
