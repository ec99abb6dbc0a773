package org.scarfwright.shop;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the shop has to work with.
 *
 * @param hours by weekday; a weekday that is not there is closed
 * @param hands how many people work at once, 1 to 20
 * @param people their names as the shop writes them; may be empty
 * @param clampSets how many joints can be in clamps at once, 0 to 99
 * @param celsius how warm the shop stays, also at night, °C, to 0.1
 * @param glue code of the glue for designs that name none
 * @param setUpMinutes to bring a saw to an angle and a thickness, 0 to 240
 * @param minutes hands-on minutes of every step, 1 to 480
 * @param keepsMinutes steps that are laid with these minutes even where others were learned
 */
public record Workshop(
        Map<DayOfWeek, List<Stretch>> hours,
        int hands,
        String people,
        int clampSets,
        BigDecimal celsius,
        Optional<String> glue,
        int setUpMinutes,
        Map<StepKind, Integer> minutes,
        Set<StepKind> keepsMinutes) {
    public Workshop {
        Map<DayOfWeek, List<Stretch>> opened = new EnumMap<>(DayOfWeek.class);
        hours.forEach((day, stretches) -> {
            if (!stretches.isEmpty()) {
                opened.put(day, List.copyOf(stretches));
            }
        });
        hours = java.util.Collections.unmodifiableMap(opened);
        minutes = java.util.Collections.unmodifiableMap(new EnumMap<>(minutes));
        keepsMinutes = Set.copyOf(keepsMinutes);
    }

    /** Shop hours without a break; an end at midnight is written 00:00. */
    public record Stretch(LocalTime from, LocalTime to) {
        int toMinute() {
            int minute = to.toSecondOfDay() / 60;
            return minute == 0 ? 24 * 60 : minute;
        }
    }

    /** Hands-on minutes of one step. */
    public int minutesOf(StepKind kind) {
        return java.util.Objects.requireNonNull(minutes.get(kind));
    }

    /** True when a step is laid with what was learned: there are enough records, and nobody chose the shop's minutes. */
    public boolean learns(StepKind kind, Map<StepKind, LearnedMinutes> learned) {
        LearnedMinutes records = learned.get(kind);
        return records != null && records.isEnough() && !keepsMinutes.contains(kind);
    }

    /** The same shop with the minutes its work is laid with. */
    public Workshop laidWith(Map<StepKind, LearnedMinutes> learned) {
        Map<StepKind, Integer> laid = new EnumMap<>(minutes);
        learned.forEach((kind, records) -> {
            if (learns(kind, learned)) {
                laid.put(kind, records.minutes());
            }
        });
        return new Workshop(hours, hands, people, clampSets, celsius, glue, setUpMinutes, laid, keepsMinutes);
    }
}
