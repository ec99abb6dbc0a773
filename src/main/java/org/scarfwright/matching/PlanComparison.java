package org.scarfwright.matching;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;

/**
 * Two plans side by side.
 *
 * @param orders every order one of them was made for, in order of their codes
 * @param onlyFirst codes of pieces only the first one cuts
 * @param onlySecond codes of pieces only the second one cuts
 * @param shared codes of pieces both of them cut
 */
public record PlanComparison(
        Plan first,
        Plan second,
        List<OrderPair> orders,
        List<String> onlyFirst,
        List<String> onlySecond,
        List<String> shared) {
    public PlanComparison {
        orders = List.copyOf(orders);
        onlyFirst = List.copyOf(onlyFirst);
        onlySecond = List.copyOf(onlySecond);
        shared = List.copyOf(shared);
    }

    /** How one neck is made. */
    public record Making(Arrangement arrangement, Angle angle, String neckPiece, String headPiece) {
        /** Such as: underlaid at 10°, K7M and S4. */
        public String words() {
            return arrangement.word() + " at " + angle + ", "
                    + (neckPiece.equals(headPiece) ? "both from " + neckPiece : neckPiece + " and " + headPiece);
        }

        private static Making of(Plan.Pairing p) {
            return new Making(
                    p.arrangement(), p.angle(), p.neck().piece(), p.head().piece());
        }
    }

    /**
     * One order in both plans.
     *
     * @param first its necks in the first plan
     * @param firstMissing necks of it the first plan could not make
     * @param differences what the second plan does otherwise, as sentences; empty when nothing
     */
    public record OrderPair(
            String order,
            List<Making> first,
            int firstMissing,
            List<Making> second,
            int secondMissing,
            List<String> differences) {
        public OrderPair {
            first = List.copyOf(first);
            second = List.copyOf(second);
            differences = List.copyOf(differences);
        }

        public boolean differs() {
            return !differences.isEmpty();
        }
    }

    public static PlanComparison of(Plan first, Plan second) {
        TreeSet<String> codes = new TreeSet<>();
        for (Plan plan : List.of(first, second)) {
            plan.pairings().forEach(p -> codes.add(p.order()));
            plan.unfilled().forEach(u -> codes.add(u.order()));
        }
        Map<String, List<Making>> one = makings(first);
        Map<String, List<Making>> other = makings(second);
        List<OrderPair> orders = new ArrayList<>();
        for (String code : codes) {
            List<Making> a = one.getOrDefault(code, List.of());
            List<Making> b = other.getOrDefault(code, List.of());
            orders.add(new OrderPair(code, a, missing(first, code), b, missing(second, code), differences(a, b)));
        }
        TreeSet<String> onlyFirst = pieces(first);
        TreeSet<String> onlySecond = pieces(second);
        TreeSet<String> shared = new TreeSet<>(onlyFirst);
        shared.retainAll(onlySecond);
        onlyFirst.removeAll(shared);
        onlySecond.removeAll(shared);
        return new PlanComparison(
                first, second, orders, List.copyOf(onlyFirst), List.copyOf(onlySecond), List.copyOf(shared));
    }

    /** How many orders are made from other pieces, or in another way, or more or less of them. */
    public int differing() {
        return (int) orders.stream().filter(OrderPair::differs).count();
    }

    /** Book value the second spends above the first; empty when one of them has no levels of its own. */
    public @Nullable BigDecimal extraCost() {
        BigDecimal before = first.bookValue().orElse(null);
        BigDecimal after = second.bookValue().orElse(null);
        return before == null || after == null ? null : after.subtract(before);
    }

    private static TreeSet<String> pieces(Plan plan) {
        TreeSet<String> codes = new TreeSet<>();
        plan.layouts().forEach(l -> codes.add(l.piece()));
        return codes;
    }

    private static Map<String, List<Making>> makings(Plan plan) {
        Map<String, List<Making>> found = new TreeMap<>();
        plan.pairings()
                .forEach(p ->
                        found.computeIfAbsent(p.order(), k -> new ArrayList<>()).add(Making.of(p)));
        return found;
    }

    private static int missing(Plan plan, String order) {
        return plan.unfilled().stream()
                .filter(u -> u.order().equals(order))
                .mapToInt(Plan.Unfilled::missing)
                .sum();
    }

    /** Necks of one order are alike, so only which makings there are counts. */
    private static List<String> differences(List<Making> first, List<Making> second) {
        List<Making> left = new ArrayList<>(first);
        List<Making> right = new ArrayList<>();
        for (Making m : second) {
            if (!left.remove(m)) {
                right.add(m);
            }
        }
        List<String> sentences = new ArrayList<>();
        Iterator<Making> before = left.iterator();
        Iterator<Making> after = right.iterator();
        while (before.hasNext() && after.hasNext()) {
            sentences.add(difference(before.next(), after.next()));
        }
        before.forEachRemaining(m -> sentences.add("One neck less: not " + m.words() + "."));
        after.forEachRemaining(m -> sentences.add("One neck more: " + m.words() + "."));
        return sentences;
    }

    private static String difference(Making a, Making b) {
        List<String> parts = new ArrayList<>();
        if (a.arrangement() != b.arrangement()) {
            parts.add(b.arrangement().word() + " instead of " + a.arrangement().word());
        }
        if (!a.angle().equals(b.angle())) {
            parts.add("at " + b.angle() + " instead of " + a.angle());
        }
        if (!a.neckPiece().equals(b.neckPiece())) {
            parts.add("neck from " + b.neckPiece() + " instead of " + a.neckPiece());
        }
        if (!a.headPiece().equals(b.headPiece())) {
            parts.add("head from " + b.headPiece() + " instead of " + a.headPiece());
        }
        return Words.capital(String.join(", ", parts)) + ".";
    }
}
