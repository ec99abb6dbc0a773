package org.scarfwright.shop.web;

import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.shop.web.Entries.Entry;

/** Shop hours of a weekday as people write them: 8-12, 13:00-17:30; empty when closed. */
final class OpeningText {
    static final String EXAMPLE = "write for example 8:00-12:00, 13:00-17:00, or nothing when the shop is closed";

    private static final Pattern STRETCH =
            Pattern.compile("(\\d{1,2})(?:[:.](\\d{2}))?\\s*[-–]\\s*(\\d{1,2})(?:[:.](\\d{2}))?");
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private OpeningText() {}

    static String of(List<Stretch> stretches) {
        return stretches.stream()
                .map(s -> TIME.format(s.from()) + "-"
                        + (s.to().equals(LocalTime.MIDNIGHT) ? "24:00" : TIME.format(s.to())))
                .collect(Collectors.joining(", "));
    }

    static List<Stretch> read(Entry entry, Entries entries) {
        List<Stretch> stretches = new ArrayList<>();
        if (entry.text().isBlank()) {
            return stretches;
        }
        for (String part : entry.text().split("[,;]", -1)) {
            Matcher m = STRETCH.matcher(part.strip());
            int from = m.matches() ? minute(m.group(1), m.group(2)) : -1;
            int to = m.matches() ? minute(m.group(3), m.group(4)) : -1;
            if (from < 0 || to < 0 || from >= to) {
                entries.refuse(
                        entry, "“" + part.strip() + "” is no stretch of hours that ends after it begins; " + EXAMPLE);
                return List.of();
            }
            stretches.add(new Stretch(LocalTime.ofSecondOfDay(from * 60L), LocalTime.ofSecondOfDay(to % 1440 * 60L)));
        }
        stretches.sort(Comparator.comparing(Stretch::from));
        for (int i = 1; i < stretches.size(); i++) {
            LocalTime before = stretches.get(i - 1).to();
            if (before.equals(LocalTime.MIDNIGHT) || stretches.get(i).from().isBefore(before)) {
                entries.refuse(entry, "“" + entry.text().strip() + "” has hours that overlap; " + EXAMPLE);
                return List.of();
            }
        }
        return stretches;
    }

    /** -1 for no time of a day; 1440 for its end. */
    private static int minute(String hours, @Nullable String minutes) {
        int minute = Integer.parseInt(hours) * 60 + (minutes == null ? 0 : Integer.parseInt(minutes));
        boolean sixty = minutes != null && Integer.parseInt(minutes) > 59;
        return sixty || minute > 1440 ? -1 : minute;
    }
}
