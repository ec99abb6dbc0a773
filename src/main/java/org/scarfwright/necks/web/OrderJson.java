package org.scarfwright.necks.web;

import java.util.List;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.book.Notices;
import org.scarfwright.necks.book.OrderEntry;

/**
 * An order as the API gives it.
 *
 * @param due ISO day
 * @param week ISO week
 * @param state open or cancelled
 * @param notices what is allowed but worth a second look
 */
record OrderJson(
        String code,
        String design,
        int quantity,
        String due,
        int priority,
        String week,
        String note,
        String state,
        List<String> notices,
        long version) {

    static OrderJson of(OrderEntry entry) {
        NeckOrder o = entry.order();
        return new OrderJson(
                o.code(),
                o.designCode(),
                o.quantity(),
                o.due().toString(),
                o.priority(),
                o.week().toString(),
                o.customerNote(),
                entry.cancelled() ? "cancelled" : "open",
                Notices.of(o),
                o.version());
    }
}
