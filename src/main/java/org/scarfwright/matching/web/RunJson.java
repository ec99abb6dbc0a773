package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.MatchRun;

/**
 * A search as the API gives it.
 *
 * @param kind match, near-equal or remainder
 * @param origin id of the plan it starts from
 * @param state waiting, running, done, stopped, failed or lost
 * @param plan id of the plan it made; for near-equal plans of the one they are near to
 * @param ahead searches that come before it
 * @param found near-equal plans it knows so far; 0 after the end
 */
record RunJson(
        long id,
        String week,
        String kind,
        @Nullable Long origin,
        String state,
        Instant askedAt,
        @Nullable Instant startedAt,
        @Nullable Instant endedAt,
        @Nullable Long plan,
        @Nullable String message,
        int ahead,
        @Nullable ProgressJson progress,
        int found) {

    /** See {@link MatchRun.Progress}. */
    record ProgressJson(
            String level,
            int necks,
            int ordered,
            BigDecimal bookValue,
            @Nullable BigDecimal bookValueBound,
            @Nullable BigDecimal gapPercent,
            int levelsProved,
            double seconds,
            double limitSeconds) {}

    static RunJson of(MatchRun run) {
        MatchRun.Progress p = run.progress();
        return new RunJson(
                run.id(),
                run.week(),
                run.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                run.origin(),
                run.state().name().toLowerCase(Locale.ROOT),
                run.askedAt(),
                run.startedAt(),
                run.endedAt(),
                run.plan(),
                run.message(),
                run.ahead(),
                p == null
                        ? null
                        : new ProgressJson(
                                p.level(),
                                p.necks(),
                                p.ordered(),
                                p.bookValue(),
                                p.bookValueBound(),
                                p.gapPercent(),
                                p.proved(),
                                p.seconds(),
                                p.limitSeconds()),
                run.found());
    }
}
