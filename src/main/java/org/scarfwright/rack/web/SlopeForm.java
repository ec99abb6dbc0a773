package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.GrainSlope;

/** One slope of grain, or two seen on two faces, as they stand in an address. */
final class SlopeForm {
    static final String FIRST = "first";
    static final String SECOND = "second";
    static final List<String> KEYS = List.of(FIRST, SECOND);

    private static final DecimalText.Range RANGE = new DecimalText.Range("1", "1000", 2, "", "12");

    /** @param second null when only one face was looked at */
    record Slopes(BigDecimal first, @Nullable BigDecimal second) {
        /** 1 in this. */
        double combined() {
            BigDecimal other = second;
            return other == null ? first.doubleValue() : GrainSlope.combined(first.doubleValue(), other.doubleValue());
        }
    }

    private SlopeForm() {}

    /** @return null when anything was refused; the reasons are then the query's errors */
    static @Nullable Slopes read(QueryText query) {
        BigDecimal first = query.read(FIRST, "Slope on one face", "12", SlopeForm::slope);
        boolean two = !query.typed(SECOND).isBlank();
        BigDecimal second = two ? query.read(SECOND, "Slope on the other face", "18", SlopeForm::slope) : null;
        return first == null || (two && second == null) ? null : new Slopes(first, second);
    }

    private static BigDecimal slope(String text) {
        String s = text.strip();
        for (String before : List.of("1 in ", "1in", "1:", "1 :")) {
            if (s.startsWith(before)) {
                s = s.substring(before.length()).strip();
                break;
            }
        }
        if (s.isEmpty()) {
            throw new MeasureFormatException("is empty; write for example 12 for 1 in 12");
        }
        return RANGE.read(s);
    }
}
