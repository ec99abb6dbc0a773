package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlanComparison;

/**
 * A near-equal plan as the API gives it.
 *
 * @param plan its id
 * @param state proposed, accepted or undone
 * @param extraCost book value it spends above the plan it is near to; below zero when it spends less
 * @param differing how many orders are made otherwise
 * @param orders their codes
 */
record NearJson(
        long plan,
        String state,
        int filled,
        int ordered,
        @Nullable BigDecimal extraCost,
        int differing,
        List<String> orders) {

    static NearJson of(PlanComparison c) {
        Plan near = c.second();
        return new NearJson(
                near.id(),
                near.state().name().toLowerCase(Locale.ROOT),
                near.filled(),
                near.ordered(),
                c.extraCost(),
                c.differing(),
                c.orders().stream()
                        .filter(PlanComparison.OrderPair::differs)
                        .map(PlanComparison.OrderPair::order)
                        .toList());
    }
}
