package org.scarfwright.matching;

import java.util.List;
import java.util.Optional;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.IsoWeek;

/**
 * The plans of the shop.
 *
 * <p>A neck (an order's code and its number) is in at most one accepted plan. A week may have several accepted plans, so
 * that orders that came late are matched around what is accepted already: {@link #make} leaves out every neck that an
 * accepted plan has, and {@link #accept} refuses a plan with such a neck.
 */
public interface Plans {
    /**
     * Matches the week's orders with the free pieces and saves the plan as a proposal. Only one search runs at a time.
     *
     * @throws org.scarfwright.web.InvalidInputException when the week has no orders, or none that is not in an accepted plan
     * @throws org.scarfwright.web.ConflictException when another search is still running, or the plan failed its check
     */
    default Plan make(IsoWeek week) {
        return make(week, Plan.Asked.WEEK);
    }

    /**
     * The same for some orders of the week, or with another seed.
     *
     * @throws org.scarfwright.web.InvalidInputException also when an order is none of the week, is left out by hand or has
     *     every neck in an accepted plan
     */
    Plan make(IsoWeek week, Plan.Asked asked);

    Optional<Plan> find(long id);

    /** The plan made last for this week. */
    Optional<Plan> latest(IsoWeek week);

    /** Every plan of this week, the one made last first. */
    List<Plan> ofWeek(IsoWeek week);

    /**
     * Why a piece is not cut for an order of a plan. The rules are asked as they stand now.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan
     * @throws org.scarfwright.web.InvalidInputException when the order is none of the plan's week or the piece none of the rack
     */
    WhyNot whyNot(long plan, String order, String piece);

    /**
     * What one more blank would give the orders this plan could not fill, beside the wood it leaves on the rack; flat and ready
     * to glue. In the order of the plan.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan
     */
    List<BlankAnswer> oneMore(long plan, Length length, Length width, Length thickness);

    /** Near-equal plans that were found for this one, the one made first in front; see {@link MatchRuns#nearEqual}. */
    List<Plan> nearEquals(long id);

    /** Plans that come from this one, the one made first in front. */
    List<Relative> relatives(long id);

    /** A plan that comes from another. */
    record Relative(long id, Plan.OriginKind kind, Plan.State state, int filled, int ordered) {}

    /**
     * Both plans side by side.
     *
     * @throws org.scarfwright.web.InvalidInputException when one of them does not exist, they are one and the same, or are
     *     plans of two weeks
     */
    PlanComparison compare(long first, long second);

    /**
     * Reserves every piece the plan cuts. Accepting an accepted plan again changes nothing.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan
     * @throws org.scarfwright.web.ConflictException naming every piece, design or order that changed or went meanwhile, or
     *     every neck that another accepted plan has
     */
    Plan accept(long id);

    /**
     * Frees every piece the plan holds. Undoing an undone plan again changes nothing.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan
     * @throws org.scarfwright.web.ConflictException when it was never accepted
     */
    Plan undo(long id);
}
