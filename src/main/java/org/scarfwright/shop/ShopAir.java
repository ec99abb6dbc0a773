package org.scarfwright.shop;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The air the shop's wood lies in.
 *
 * @param now what the hygrometer showed last; null when nobody read it
 * @param readOn the day it was read; null with now
 * @param driest the driest air of the year
 * @param dampest the dampest air of the year
 */
public record ShopAir(@Nullable Air now, @Nullable LocalDate readOn, Air driest, Air dampest) {
    /**
     * @param celsius temperature in °C, to 0.1
     * @param humidity relative humidity in percent, to 0.1
     */
    public record Air(BigDecimal celsius, BigDecimal humidity) {}
}
