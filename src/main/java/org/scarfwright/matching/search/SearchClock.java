package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.function.BooleanSupplier;

/** How long a search may still run. */
final class SearchClock {
    private final long start = System.nanoTime();
    private final long end;
    private final SearchWatch watch;

    SearchClock(Duration limit, SearchWatch watch) {
        this.watch = watch;
        // Longer than a century means without a limit.
        long nanos = limit.compareTo(Duration.ofDays(36_500)) > 0 ? Long.MAX_VALUE / 4 : limit.toNanos();
        end = start + Math.max(0, nanos);
    }

    /** A clock that stops after so long at the latest, or when this one does; it tells nobody. */
    SearchClock within(Duration limit) {
        Duration left = Duration.ofMillis(leftMillis());
        return new SearchClock(limit.compareTo(left) < 0 ? limit : left, () -> watch.stopped());
    }

    /** This clock, telling nobody. */
    SearchClock silent() {
        return within(Duration.ofMillis(leftMillis()));
    }

    /** Time is over or the search was cancelled. */
    boolean over() {
        return System.nanoTime() - end >= 0 || watch.stopped();
    }

    BooleanSupplier cancelled() {
        return watch::stopped;
    }

    /** For a program that may take what time is left. */
    LinearSolver.Limits limits() {
        return limits(-1);
    }

    /** @param nodes most nodes of the search tree */
    LinearSolver.Limits limits(long nodes) {
        return new LinearSolver.Limits(leftMillis(), nodes, cancelled());
    }

    void tell(SearchProgress progress) {
        watch.progress(progress);
    }

    long leftMillis() {
        return Math.max(0, (end - System.nanoTime()) / 1_000_000);
    }

    double seconds() {
        return (System.nanoTime() - start) / 1e9;
    }
}
