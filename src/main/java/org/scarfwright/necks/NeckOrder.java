package org.scarfwright.necks;

import java.time.LocalDate;

/**
 * So many necks of one design for one week.
 *
 * @param code short, unique
 * @param designCode the design
 * @param quantity 1 to 999
 * @param priority 1 (can wait) to 9 (must be filled); the weight of a filled neck, default 5
 */
public record NeckOrder(
        long id,
        long version,
        String code,
        String designCode,
        int quantity,
        LocalDate due,
        int priority,
        IsoWeek week,
        String customerNote) {}
