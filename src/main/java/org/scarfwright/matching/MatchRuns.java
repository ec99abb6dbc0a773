package org.scarfwright.matching;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.scarfwright.necks.IsoWeek;

/**
 * Searches that go on when nobody looks. One runs at a time; others wait in the order they were asked for. Nothing is reserved
 * by a search, whatever becomes of it: its plan is a proposal.
 */
public interface MatchRuns {
    /**
     * Asks for the week to be matched and returns at once. A search for the very same question that waits or runs already is
     * returned instead of a second one.
     *
     * @throws org.scarfwright.web.InvalidInputException when the week has no orders, or none that is not in an accepted plan
     * @throws org.scarfwright.web.ConflictException when too many searches wait
     */
    MatchRun start(IsoWeek week);

    Optional<MatchRun> find(long id);

    /** Those of a week that wait or run, the one that comes first in front. */
    List<MatchRun> open(IsoWeek week);

    /**
     * Stops a search, which keeps the best plan so far; one that has ended stays as it is.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such search
     */
    MatchRun stop(long id);

    /** Waits until the search has ended, but no longer than this. */
    MatchRun await(long id, Duration patience);

    /** Loads what the first search needs, behind the caller's back. */
    void warmUp();
}
