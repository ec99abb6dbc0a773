package org.scarfwright.necks.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.web.Formats;

/**
 * How the figures of a joint are written for one shop.
 *
 * @param unit the shop's
 */
record Shown(LengthUnit unit, Formats fmt) {
    String length(@Nullable Length length) {
        return fmt.length(length, unit);
    }

    /** For gaps and slips: two decimals. */
    String fine(Length length) {
        return fmt.fine(length, unit);
    }

    String decimal(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    }
}
