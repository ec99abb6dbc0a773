package org.scarfwright.matching.web;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.necks.IsoWeek;

/**
 * How far a week has come.
 *
 * @param orders in order of priority, due day and code
 * @param ordered necks asked for
 * @param planned necks that an accepted plan has
 * @param plans every plan of the week, the one made last first
 * @param step what to do next
 */
record WeekStanding(IsoWeek week, List<OrderRow> orders, int ordered, int planned, List<Plan> plans, Step step) {

    public LocalDate monday() {
        return week.monday();
    }

    public LocalDate sunday() {
        return week.monday().plusDays(6);
    }

    public int open() {
        return ordered - planned;
    }

    /** The plan to look at: the last one nobody has undone, beside near-equal ones nobody has taken; else none. */
    public @Nullable Plan current() {
        return plans.stream()
                .filter(p -> p.state() != Plan.State.UNDONE && standsForTheWeek(p))
                .findFirst()
                .orElse(null);
    }

    /** Near-equal plans are a choice beside the one they are near to, until one of them is accepted. */
    static boolean standsForTheWeek(Plan plan) {
        Plan.Origin origin = plan.asked().origin();
        return plan.state() == Plan.State.ACCEPTED || origin == null || origin.kind() != Plan.OriginKind.NEAR_EQUAL;
    }

    /** The one next step. */
    enum Step {
        /** No orders in this week. */
        ORDER,
        /** Necks that no plan has looked at yet. */
        MATCH,
        /** A proposal waits for a decision. */
        DECIDE,
        /** Everything that can be made is in an accepted plan; some is not. */
        FILL,
        /** Every neck is in an accepted plan. */
        CUT
    }

    /**
     * An order of the week.
     *
     * @param planned necks of it that an accepted plan has
     * @param standing where the rest stands, in words
     * @param late its due day has passed and some of it is in no accepted plan
     */
    record OrderRow(
            String code,
            String design,
            String name,
            int quantity,
            LocalDate due,
            int priority,
            int planned,
            String standing,
            boolean late) {
        /** Necks that no accepted plan has. */
        public int open() {
            return quantity - planned;
        }
    }
}
