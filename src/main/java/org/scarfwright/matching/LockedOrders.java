package org.scarfwright.matching;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** Some orders of a plan as a plan of their own. A piece is cut as a whole, so its layout goes with all of its orders or with none. */
final class LockedOrders {
    private static final int MOST_ERRORS = 20;

    private LockedOrders() {}

    /**
     * A proposal without an id. It was not searched for by itself, so it has no levels.
     *
     * @throws InvalidInputException when an order is none the plan makes a neck of, or shares a piece with one that is not named
     */
    static Plan of(Plan plan, List<String> orders, Instant at) {
        Set<String> wanted = new TreeSet<>(orders);
        refuseUnknown(plan, wanted);
        refuseShared(plan, wanted);
        List<Plan.Pairing> pairings =
                plan.pairings().stream().filter(p -> wanted.contains(p.order())).toList();
        List<Plan.PieceLayout> layouts = plan.layouts().stream()
                .filter(l -> wanted.containsAll(plan.ordersOn(l.piece())))
                .toList();
        return new Plan(
                0,
                plan.week(),
                Plan.State.PROPOSED,
                Plan.Status.GAP,
                at,
                plan.engine(),
                plan.seconds(),
                pairings.size(),
                pairings.size(),
                List.of(),
                pairings,
                layouts,
                List.of(),
                layouts.stream().map(Plan.PieceLayout::books).reduce(Plan.Books.NOTHING, Plan.Books::plus),
                plan.hands(),
                new Plan.Asked(
                        List.copyOf(wanted), plan.asked().seed(), new Plan.Origin(Plan.OriginKind.LOCKED, plan.id())));
    }

    private static void refuseUnknown(Plan plan, Set<String> wanted) {
        if (wanted.isEmpty()) {
            throw new InvalidInputException(new FieldError(
                    "/orders", "Orders", "", "are missing; name at least one that the plan makes a neck of"));
        }
        List<FieldError> errors = new ArrayList<>();
        for (String code : wanted) {
            if (plan.pairings().stream().noneMatch(p -> p.order().equals(code))) {
                errors.add(new FieldError(
                        "/orders",
                        "Order",
                        code,
                        "“" + code + "” has no neck in plan " + plan.id() + "; name one that has"));
            }
        }
        throwIfAny(errors);
    }

    private static void refuseShared(Plan plan, Set<String> wanted) {
        List<FieldError> errors = new ArrayList<>();
        for (Plan.PieceLayout layout : plan.layouts()) {
            Set<String> sharing = new TreeSet<>(plan.ordersOn(layout.piece()));
            Set<String> named = new TreeSet<>(sharing);
            named.retainAll(wanted);
            if (!named.isEmpty() && named.size() < sharing.size()) {
                sharing.removeAll(named);
                errors.add(new FieldError(
                        "/orders",
                        "Orders",
                        String.join(" ", named),
                        "cannot be locked so: " + layout.piece() + " is cut for "
                                + Words.list(List.copyOf(named)) + " and for " + Words.list(List.copyOf(sharing))
                                + "; accept all of them or none"));
            }
        }
        throwIfAny(errors);
    }

    private static void throwIfAny(List<FieldError> errors) {
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors.subList(0, Math.min(errors.size(), MOST_ERRORS)));
        }
    }
}
