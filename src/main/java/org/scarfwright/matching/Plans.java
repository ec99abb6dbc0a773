package org.scarfwright.matching;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
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

    /** Ids of the accepted plans of this week and the weeks before it, earliest week first, in each the one made last first. */
    List<Long> acceptedUpTo(IsoWeek week);

    /** Ids of the accepted plans of this week, the one made last first. */
    List<Long> acceptedIn(IsoWeek week);

    /** How many necks of these orders accepted plans make, by order; orders without one are left out. */
    Map<String, Integer> acceptedCounts(Collection<String> orders);

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

    /**
     * A neck an accepted plan makes no longer.
     *
     * @param who empty when nobody was named
     */
    record GivenUp(PlannedNeck neck, Instant at, String who, String why) {}

    /**
     * How one neck of a plan stands.
     *
     * @param givenUp empty while the plan makes it
     * @param wood the pieces it is cut from
     */
    record NeckStanding(Plan.Pairing pairing, @Nullable GivenUp givenUp, List<Wood> wood) {
        public NeckStanding {
            wood = List.copyOf(wood);
        }
    }

    /**
     * A piece a neck is cut from.
     *
     * @param others necks of the plan that need it too, as A-101 no. 2
     */
    record Wood(String piece, Fate fate, List<String> others) {
        public Wood {
            others = List.copyOf(others);
        }
    }

    /** What becomes of a piece when a neck is given up that it is for. */
    enum Fate {
        /** Only this neck needs it; it goes back to the rack. */
        FREED,
        /** Other necks of the plan need it; it stays reserved. */
        NEEDED,
        /** It was cut; nothing of it is left to free. */
        CUT,
        /** The plan does not hold it. */
        NOT_HELD
    }

    /**
     * How a neck of a plan stands, and what giving it up would free.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan, or it has no such neck
     */
    NeckStanding neck(PlannedNeck neck);

    /** Necks this plan was accepted for and makes no longer, in order of their orders. */
    List<GivenUp> givenUp(long plan);

    /**
     * What came of giving a neck up.
     *
     * @param freed codes of the pieces that only it needed and that are on the rack again
     */
    record GivingUp(GivenUp neck, List<String> freed) {
        public GivingUp {
            freed = List.copyOf(freed);
        }
    }

    /**
     * Takes one neck out of an accepted plan, because its wood was spoilt or is gone: the week can be matched for it again. Pieces
     * that only it needs and that are still there are freed; what was cut stays as it is, and a piece other necks need stays
     * reserved as a whole. Giving up a neck that was given up changes nothing.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan, or it makes no such neck
     * @throws org.scarfwright.web.ConflictException when the plan is not accepted
     * @throws org.scarfwright.web.InvalidInputException when no reason is given, or it or the name is too long
     */
    GivingUp giveUp(PlannedNeck neck, String who, String why);

    /**
     * Has the plan make a neck after all that was given up. Making one that was not given up changes nothing.
     *
     * @throws org.scarfwright.web.NotFoundException when there is no such plan, or it never made such a neck
     * @throws org.scarfwright.web.ConflictException when the plan is not accepted, another accepted plan makes the neck by now, or a
     *     piece it needs is not free as it was any more
     */
    void makeAfterAll(PlannedNeck neck);
}
