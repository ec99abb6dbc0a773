package org.scarfwright.matching;

import java.math.BigDecimal;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One search that was asked for, from the moment it is asked for to the plan it made.
 *
 * @param week as written, 2026-W49
 * @param kind what it looks for
 * @param origin the plan it starts from; empty when it matches the week anew
 * @param startedAt when the search began; empty while it waits
 * @param endedAt empty while it waits or runs
 * @param plan the plan it made; for near-equal plans the one they are near to
 * @param message why there is no plan, or what a person should know of it, as sentences
 * @param ahead searches that come before this one; 0 when it is not waiting
 * @param progress how far it is; empty before the first plan and after the end
 * @param found near-equal plans it knows so far; 0 after the end
 */
public record MatchRun(
        long id,
        String week,
        Kind kind,
        @Nullable Long origin,
        State state,
        Instant askedAt,
        @Nullable Instant startedAt,
        @Nullable Instant endedAt,
        @Nullable Long plan,
        @Nullable String message,
        int ahead,
        @Nullable Progress progress,
        int found) {

    /** Waiting or being searched. */
    public boolean open() {
        return state == State.WAITING || state == State.RUNNING;
    }

    /** What a search looks for. */
    public enum Kind {
        /** The week's plan. */
        MATCH,
        /** Plans near to one there is. */
        NEAR_EQUAL,
        /** The plan of what is left beside locked orders. */
        REMAINDER
    }

    /** Where a search stands. */
    public enum State {
        /** Another search comes first. */
        WAITING,
        RUNNING,
        /** It made a plan. */
        DONE,
        /** Somebody stopped it before it had anything to keep. */
        STOPPED,
        FAILED,
        /** The program ended under it. */
        LOST
    }

    /**
     * How far a search is.
     *
     * @param level the level it works on, in the words of {@link Plan.Level}
     * @param necks necks the best plan so far makes
     * @param ordered necks that were asked for
     * @param bookValue what the best plan so far spends, in the shop's currency
     * @param bookValueBound no plan that makes as many necks spends less; empty while nothing is proved
     * @param gapPercent how much less a plan could still spend at the most, of what this one spends; empty while unknown
     * @param proved levels that are proved best
     * @param seconds how long it has searched
     * @param limitSeconds how long it may
     */
    public record Progress(
            String level,
            int necks,
            int ordered,
            BigDecimal bookValue,
            @Nullable BigDecimal bookValueBound,
            @Nullable BigDecimal gapPercent,
            int proved,
            double seconds,
            double limitSeconds) {}
}
