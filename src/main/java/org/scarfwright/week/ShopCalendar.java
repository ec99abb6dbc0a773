package org.scarfwright.week;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.scarfwright.shop.DayOff;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;

/**
 * When the shop is open, on its own wall clock. On a day the clocks change a stretch is as long as really passes between its two
 * times; a time the change leaves out is the first one after it.
 */
final class ShopCalendar {
    private final Workshop workshop;
    private final Map<LocalDate, String> daysOff;
    private final ZoneId zone;

    ShopCalendar(Workshop workshop, List<DayOff> daysOff, ZoneId zone) {
        this.workshop = workshop;
        this.daysOff = daysOff.stream().collect(Collectors.toMap(DayOff::day, DayOff::word));
        this.zone = zone;
    }

    ZoneId zone() {
        return zone;
    }

    Instant startOf(LocalDate day) {
        return day.atStartOfDay(zone).toInstant();
    }

    LocalDate dayOf(Instant instant) {
        return instant.atZone(zone).toLocalDate();
    }

    List<Stretch> stretches(LocalDate day) {
        return daysOff.containsKey(day) ? List.of() : workshop.hours().getOrDefault(day.getDayOfWeek(), List.of());
    }

    /** Why the shop is closed that day; empty when it is open. */
    Optional<String> closed(LocalDate day) {
        if (daysOff.containsKey(day)) {
            return Optional.of(String.valueOf(daysOff.get(day)));
        }
        return stretches(day).isEmpty() ? Optional.of("closed") : Optional.empty();
    }

    /** Hours of so many days from an instant on; a stretch that has begun counts from then. */
    List<Hours> hours(Instant from, int days) {
        List<Hours> hours = new ArrayList<>();
        LocalDate first = dayOf(from);
        for (int d = 0; d < days; d++) {
            LocalDate day = first.plusDays(d);
            for (Stretch s : stretches(day)) {
                Instant begins = day.atTime(s.from()).atZone(zone).toInstant();
                Instant ends = s.to().equals(LocalTime.MIDNIGHT)
                        ? startOf(day.plusDays(1))
                        : day.atTime(s.to()).atZone(zone).toInstant();
                Instant starts = begins.isBefore(from) ? from : begins;
                if (starts.isBefore(ends)) {
                    hours.add(new Hours(day, starts, ends, workshop.hands()));
                }
            }
        }
        return hours;
    }
}
