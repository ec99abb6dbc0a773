package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlanComparison;

/**
 * Two plans side by side as the API gives them; see {@link PlanComparison}.
 *
 * @param extraCost book value the second spends above the first; null when one of them has no levels of its own
 * @param differing how many orders are made otherwise
 */
record ComparisonJson(
        SideJson first,
        SideJson second,
        @Nullable BigDecimal extraCost,
        int differing,
        List<OrderJson> orders,
        List<String> onlyFirst,
        List<String> onlySecond,
        List<String> shared) {

    /** One of the two. */
    record SideJson(
            long plan,
            int filled,
            int ordered,
            List<PlanJson.LevelJson> levels,
            double netYield,
            double recovery,
            double rescue,
            PlanJson.BooksJson books) {
        private static SideJson of(Plan plan) {
            return new SideJson(
                    plan.id(),
                    plan.filled(),
                    plan.ordered(),
                    PlanJson.levels(plan),
                    plan.books().netYield(),
                    plan.books().recovery(),
                    plan.books().rescue(),
                    PlanJson.books(plan.books()));
        }
    }

    /** @param differences what the second plan does otherwise, as sentences; empty when nothing */
    record OrderJson(
            String order,
            List<MakingJson> first,
            int firstMissing,
            List<MakingJson> second,
            int secondMissing,
            List<String> differences) {}

    /** How one neck is made. */
    record MakingJson(String arrangement, BigDecimal angle, String neckPiece, String headPiece) {
        private static MakingJson of(PlanComparison.Making m) {
            return new MakingJson(m.arrangement().word(), m.angle().toDegrees(), m.neckPiece(), m.headPiece());
        }
    }

    static ComparisonJson of(PlanComparison c) {
        return new ComparisonJson(
                SideJson.of(c.first()),
                SideJson.of(c.second()),
                c.extraCost(),
                c.differing(),
                c.orders().stream()
                        .map(o -> new OrderJson(
                                o.order(),
                                o.first().stream().map(MakingJson::of).toList(),
                                o.firstMissing(),
                                o.second().stream().map(MakingJson::of).toList(),
                                o.secondMissing(),
                                o.differences()))
                        .toList(),
                c.onlyFirst(),
                c.onlySecond(),
                c.shared());
    }
}
