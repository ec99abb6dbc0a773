package org.scarfwright.shop;

import java.time.LocalDate;

/** A day the shop is closed though its weekday is not, and a word why. */
public record DayOff(LocalDate day, String word) {}
