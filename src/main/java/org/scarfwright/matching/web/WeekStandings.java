package org.scarfwright.matching.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.matching.web.WeekStanding.OrderRow;
import org.scarfwright.matching.web.WeekStanding.Step;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;
import org.springframework.stereotype.Component;

/** Says how far a week has come and what comes next. */
@Component
class WeekStandings {
    private static final int WEEKS_BACK = 8;

    private final Orders orders;
    private final Designs designs;
    private final Plans plans;
    private final Clock clock;

    WeekStandings(Orders orders, Designs designs, Plans plans, Clock clock) {
        this.orders = orders;
        this.designs = designs;
        this.plans = plans;
        this.clock = clock;
    }

    /** This week when it has orders, else the next one that has, else the last one that had, else this week. */
    IsoWeek weekAtHand() {
        IsoWeek now = IsoWeek.of(LocalDate.now(clock));
        IsoWeek past = null;
        for (IsoWeek week : orders.weeks()) {
            if (week.compareTo(now) >= 0) {
                return week;
            }
            past = week;
        }
        return past == null ? now : past;
    }

    /** Orders of earlier weeks that no accepted plan has in full; the last {@value #WEEKS_BACK} weeks with orders are looked at. */
    List<OrderRow> lateBefore(IsoWeek week) {
        List<IsoWeek> before =
                orders.weeks().stream().filter(w -> w.compareTo(week) < 0).toList();
        return before.subList(Math.max(0, before.size() - WEEKS_BACK), before.size()).stream()
                .filter(this::isOpen)
                .flatMap(w -> of(w).orders().stream())
                .filter(o -> o.planned() < o.quantity())
                .toList();
    }

    /** Asked first: it reads no plan. */
    private boolean isOpen(IsoWeek week) {
        List<NeckOrder> asked = orders.inWeek(week);
        Map<String, Integer> made = accepted(asked);
        return asked.stream().anyMatch(o -> made.getOrDefault(o.code(), 0) < o.quantity());
    }

    private Map<String, Integer> accepted(List<NeckOrder> asked) {
        return plans.acceptedCounts(asked.stream().map(NeckOrder::code).toList());
    }

    WeekStanding of(IsoWeek week) {
        List<NeckOrder> asked = orders.inWeek(week);
        List<Plan> made = plans.ofWeek(week);
        Map<String, Integer> accepted = accepted(asked);
        Plan latest =
                made.stream().filter(WeekStanding::standsForTheWeek).findFirst().orElse(null);
        Map<String, String> names = new HashMap<>();
        for (NeckDesign design : designs.all()) {
            names.put(design.code(), design.name());
        }
        LocalDate today = LocalDate.now(clock);
        List<OrderRow> rows = new ArrayList<>();
        int ordered = 0;
        int planned = 0;
        for (NeckOrder order : asked) {
            int done = Math.min(order.quantity(), accepted.getOrDefault(order.code(), 0));
            ordered += order.quantity();
            planned += done;
            rows.add(new OrderRow(
                    order.code(),
                    order.designCode(),
                    names.getOrDefault(order.designCode(), order.designCode()),
                    order.quantity(),
                    order.due(),
                    order.priority(),
                    done,
                    standing(order, done, latest),
                    done < order.quantity() && order.due().isBefore(today)));
        }
        return new WeekStanding(week, rows, ordered, planned, made, step(rows, latest));
    }

    private static String standing(NeckOrder order, int done, @Nullable Plan latest) {
        int open = order.quantity() - done;
        if (open == 0) {
            return "accepted";
        }
        String before = done == 0 ? "" : done + " accepted, ";
        int proposed = latest == null || latest.state() != Plan.State.PROPOSED
                ? 0
                : (int) latest.pairings().stream()
                        .filter(p -> p.order().equals(order.code()))
                        .count();
        if (proposed > 0) {
            int rest = open - proposed;
            return before
                    + (order.quantity() == 1 ? "proposed" : proposed + " proposed")
                    + (rest > 0 ? ", " + rest + " without wood" : "");
        }
        if (latest != null && latest.unfilled().stream().anyMatch(u -> u.order().equals(order.code()))) {
            return before + (order.quantity() == 1 ? "no wood fits" : open + " without wood");
        }
        return before + (done == 0 ? "not matched yet" : open + " not matched yet");
    }

    private static Step step(List<OrderRow> rows, @Nullable Plan latest) {
        if (rows.isEmpty()) {
            return Step.ORDER;
        }
        if (rows.stream().allMatch(r -> r.planned() == r.quantity())) {
            return Step.CUT;
        }
        if (latest == null || latest.state() == Plan.State.UNDONE) {
            return Step.MATCH;
        }
        if (latest.state() == Plan.State.PROPOSED && latest.filled() > 0) {
            return Step.DECIDE;
        }
        boolean known = rows.stream()
                .filter(r -> r.planned() < r.quantity())
                .allMatch(r -> latest.unfilled().stream()
                                .filter(u -> u.order().equals(r.code()))
                                .mapToInt(Plan.Unfilled::missing)
                                .sum()
                        >= r.quantity() - r.planned());
        return known ? Step.FILL : Step.MATCH;
    }
}
