package org.scarfwright.necks.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.NeckOrder;

/** An order written out again. */
public final class OrderText {
    private OrderText() {}

    /** What a form is filled with to edit it, and what a file says to enter it again. */
    public static Draft draftOf(NeckOrder order) {
        return new Draft(new LinkedHashMap<>(figures(order)), LengthUnit.MM);
    }

    static List<String> differences(NeckOrder there, NeckOrder here) {
        Map<OrderField, String> given = figures(here);
        List<String> found = new ArrayList<>();
        figures(there).forEach((field, was) -> {
            String is = Objects.requireNonNull(given.get(field));
            if (!was.equals(is)) {
                found.add(field.label().toLowerCase(Locale.ROOT) + " is " + DesignText.shown(was) + " there and "
                        + DesignText.shown(is) + " here");
            }
        });
        return found;
    }

    /** Everything but the code, for finding an order that says the same. */
    static Map<OrderField, String> withoutCode(NeckOrder order) {
        Map<OrderField, String> figures = figures(order);
        figures.remove(OrderField.CODE);
        return figures;
    }

    private static Map<OrderField, String> figures(NeckOrder o) {
        Map<OrderField, String> figures = new LinkedHashMap<>();
        figures.put(OrderField.CODE, o.code());
        figures.put(OrderField.DESIGN, o.designCode());
        figures.put(OrderField.QUANTITY, String.valueOf(o.quantity()));
        figures.put(OrderField.DUE, o.due().toString());
        figures.put(OrderField.PRIORITY, String.valueOf(o.priority()));
        figures.put(OrderField.WEEK, o.week().toString());
        figures.put(OrderField.NOTE, o.customerNote());
        return figures;
    }
}
