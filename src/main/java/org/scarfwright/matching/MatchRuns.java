package org.scarfwright.matching;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
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
    default MatchRun start(IsoWeek week) {
        return start(week, Plan.Asked.WEEK);
    }

    /**
     * The same for some orders of the week, or with another seed.
     *
     * @throws org.scarfwright.web.InvalidInputException also when an order is none of the week, is left out by hand or has
     *     every neck in an accepted plan
     */
    MatchRun start(IsoWeek week, Plan.Asked asked);

    /**
     * Asks for up to three plans that differ most from this one and from each other, fill as much and spend no more than this
     * much more. Each is kept as a proposal that names this plan as its origin; see {@link Plans#nearEquals}.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan
     * @throws org.scarfwright.web.ConflictException when the plan is accepted, makes no neck, or is no answer to what the shop
     *     asks now; then naming what changed since, and by whom where the ledger knows
     */
    MatchRun nearEqual(long plan, ExtraCost extra);

    /**
     * Accepts some orders of a plan, in a plan of their own, and asks for the others to be matched with the rack that is left; all
     * of it or nothing. Undoing their plan undoes it.
     *
     * @param orders codes of orders the plan makes necks of
     * @throws org.scarfwright.web.NotFoundException when there is no such plan
     * @throws org.scarfwright.web.InvalidInputException when an order is none of the plan, or a piece carries parts of orders
     *     that are named and of orders that are not; with the orders that share it
     * @throws org.scarfwright.web.ConflictException as {@link Plans#accept}, or when too many searches wait
     */
    Locked lock(long plan, List<String> orders);

    /**
     * What came of locking some orders.
     *
     * @param locked the accepted plan of these orders; the plan itself when they are all it makes
     * @param remainder the search for what is left; empty when nothing is
     */
    record Locked(Plan locked, @Nullable MatchRun remainder) {}

    Optional<MatchRun> find(long id);

    /** The last search for plans near to this one. */
    Optional<MatchRun> lastNear(long plan);

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
