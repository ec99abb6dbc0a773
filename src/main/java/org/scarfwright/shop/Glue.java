package org.scarfwright.shop;

import java.math.BigDecimal;
import java.time.Duration;

/**
 * A kind of glue and how long it takes.
 *
 * @param code short name, unique in the shop
 * @param clamp least time in clamps
 * @param cure until the joint may be worked, at least the time in clamps
 * @param lowestCelsius coldest air it may set in, °C, to 0.1
 * @param openMinutes longest time from spreading to closing the joint
 * @param commonPractice its figures came with the program: common practice, written from memory; a shop's own are its own
 */
public record Glue(
        String code,
        String name,
        Duration clamp,
        Duration cure,
        BigDecimal lowestCelsius,
        int openMinutes,
        boolean commonPractice) {}
