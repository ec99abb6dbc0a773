package org.scarfwright.necks.book;

import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Enters, changes, calls off and takes up orders again. */
@Service
public class OrderBook {
    private final JdbcOrders orders;
    private final JdbcDesigns designs;
    private final OrderCodes codes = new OrderCodes(new SecureRandom());

    OrderBook(JdbcOrders orders, JdbcDesigns designs) {
        this.orders = orders;
        this.designs = designs;
    }

    /** @throws NotFoundException when there is none */
    public OrderEntry get(String code) {
        return orders.entry(code)
                .orElseThrow(() -> new NotFoundException("There is no order " + DraftReader.quote(code) + "."));
    }

    /** Of one week, or of all, also those called off; by priority (highest first), due day, code. */
    public List<OrderEntry> entries(Optional<IsoWeek> week) {
        return orders.entries(week);
    }

    /** Orders for one design that are not called off; by week, priority (highest first), due day, code. */
    public List<NeckOrder> openOf(String designCode) {
        return orders.openOf(designCode);
    }

    /** Weeks with any order on file, also those called off; earliest first. */
    public List<IsoWeek> weeksOnFile() {
        return orders.weeksOnFile();
    }

    /** What would become of each entry; nothing is saved. A new order without a code still has none. */
    @Transactional(readOnly = true)
    public List<Checked<NeckOrder>> check(List<Entry> entries) {
        OrderReader reader = new OrderReader(designs.ids().keySet());
        List<Reading<NeckOrder>> readings =
                entries.stream().map(e -> reader.read(e.draft())).toList();
        List<NeckOrder> read =
                readings.stream().flatMap(r -> r.value().stream()).toList();
        Map<String, NeckOrder> kept = orders
                .entries(read.stream()
                        .map(NeckOrder::code)
                        .filter(c -> !c.isEmpty())
                        .collect(Collectors.toSet()))
                .stream()
                .map(OrderEntry::order)
                .collect(Collectors.toMap(NeckOrder::code, o -> o));
        Map<Map<OrderField, String>, Deque<NeckOrder>> unclaimed = unclaimed(entries, readings);
        Map<String, NeckOrder> before = new HashMap<>();
        List<Checked<NeckOrder>> checked = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            Reading<NeckOrder> reading = readings.get(i);
            if (reading.value().isEmpty() || !entry.faults().isEmpty()) {
                checked.add(Checked.refused(entry, reading));
                continue;
            }
            NeckOrder order = reading.value().get();
            if (order.code().isEmpty()) {
                Deque<NeckOrder> same = entry.repeatable() ? unclaimed.get(OrderText.withoutCode(order)) : null;
                NeckOrder there = same == null ? null : same.poll();
                checked.add(
                        there == null
                                ? Checked.accepted(entry, Fate.NEW, order)
                                : Checked.accepted(entry, Fate.UNCHANGED, there));
                continue;
            }
            NeckOrder there = kept.getOrDefault(order.code(), before.get(order.code()));
            before.putIfAbsent(order.code(), order);
            if (there == null) {
                checked.add(Checked.accepted(entry, Fate.NEW, order));
                continue;
            }
            List<String> differences = OrderText.differences(there, order);
            checked.add(
                    differences.isEmpty()
                            ? Checked.accepted(entry, Fate.UNCHANGED, there)
                            : Checked.refused(entry, taken(order, differences)));
        }
        return checked;
    }

    /**
     * Orders on file by what they say, for rows of a file that carry no code: the first such row is the first such order, the
     * second the second, so that reading the same file again adds nothing. Orders the file names by code are not among them.
     */
    private Map<Map<OrderField, String>, Deque<NeckOrder>> unclaimed(
            List<Entry> entries, List<Reading<NeckOrder>> readings) {
        Set<IsoWeek> weeks = new HashSet<>();
        Set<String> named = new HashSet<>();
        for (int i = 0; i < entries.size(); i++) {
            Optional<NeckOrder> order = readings.get(i).value();
            if (order.isPresent() && !order.get().code().isEmpty()) {
                named.add(order.get().code());
            } else if (order.isPresent() && entries.get(i).repeatable()) {
                weeks.add(order.get().week());
            }
        }
        Map<Map<OrderField, String>, Deque<NeckOrder>> unclaimed = new HashMap<>();
        weeks.stream()
                .sorted()
                .map(week -> orders.entries(Optional.of(week)))
                .flatMap(Collection::stream)
                .map(OrderEntry::order)
                .filter(o -> !named.contains(o.code()))
                .forEach(o -> unclaimed
                        .computeIfAbsent(OrderText.withoutCode(o), k -> new ArrayDeque<>())
                        .add(o));
        return unclaimed;
    }

    private static Flaw taken(NeckOrder order, List<String> differences) {
        return new Flaw(
                OrderField.CODE,
                order.code(),
                "“" + order.code() + "” is taken: " + String.join(", ", differences)
                        + "; edit that order, or give this one a code of its own");
    }

    /**
     * Enters all of them, or none; those without a code get one. What is kept already with the same figures stays as it is.
     *
     * @throws InvalidInputException with every error when one is refused
     */
    @Transactional
    public List<Checked<NeckOrder>> add(List<Entry> entries) {
        List<Checked<NeckOrder>> checked = check(entries);
        Checked.requireAll(checked);
        Map<String, Long> ids = designs.ids();
        Set<String> given = checked.stream()
                .map(c -> c.value().orElseThrow().code())
                .collect(Collectors.toCollection(HashSet::new));
        List<Checked<NeckOrder>> done = new ArrayList<>();
        try {
            for (Checked<NeckOrder> c : checked) {
                NeckOrder order = c.value().orElseThrow();
                if (c.fate() != Fate.NEW) {
                    done.add(c);
                    continue;
                }
                if (order.code().isEmpty()) {
                    order = withCode(order, codes.next(code -> given.contains(code) || orders.has(code)));
                    given.add(order.code());
                }
                Long design = ids.get(order.designCode());
                if (design == null) {
                    throw new ConflictException("The design of order " + order.code() + " is gone; send it again.");
                }
                orders.insert(order, design);
                done.add(Checked.accepted(c.entry(), Fate.NEW, order));
            }
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody entered an order with the same code just now; send it again.");
        }
        return done;
    }

    /**
     * Changes an order. Its code stays.
     *
     * @param seenVersion the version the editor saw
     * @throws EditConditionException when it was changed since
     * @throws ConflictException when it is called off
     * @throws InvalidInputException with every error
     */
    @Transactional
    public OrderEntry change(String code, long seenVersion, Entry entry) {
        OrderEntry there = get(code);
        NeckOrder kept = there.order();
        if (kept.version() != seenVersion) {
            throw EditConditionException.stale();
        }
        if (there.cancelled()) {
            throw new ConflictException("Order " + kept.code() + " is cancelled; restore it first.");
        }
        Map<String, Long> ids = designs.ids();
        Reading<NeckOrder> reading = new OrderReader(ids.keySet()).read(entry.draft());
        if (reading.value().isEmpty() || !entry.faults().isEmpty()) {
            throw new InvalidInputException(Checked.refused(entry, reading).errors());
        }
        NeckOrder order = reading.value().get();
        if (!order.code().isEmpty() && !order.code().equals(kept.code())) {
            throw new InvalidInputException(entry.error(new Flaw(
                    OrderField.CODE, order.code(), "cannot be changed; this order stays “" + kept.code() + "”")));
        }
        Long design = ids.get(order.designCode());
        if (design == null || !orders.update(kept.id(), seenVersion, order, design)) {
            throw EditConditionException.stale();
        }
        return get(code);
    }

    /** Calls an order off; it stays on file. Does nothing when it is called off already. */
    @Transactional
    public OrderEntry cancel(String code) {
        orders.setCancelled(get(code).order().code(), true);
        return get(code);
    }

    /** Takes an order up again. Does nothing when it was not called off. */
    @Transactional
    public OrderEntry restore(String code) {
        orders.setCancelled(get(code).order().code(), false);
        return get(code);
    }

    private static NeckOrder withCode(NeckOrder o, String code) {
        return new NeckOrder(
                o.id(),
                o.version(),
                code,
                o.designCode(),
                o.quantity(),
                o.due(),
                o.priority(),
                o.week(),
                o.customerNote());
    }
}
