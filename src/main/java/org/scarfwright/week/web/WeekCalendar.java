package org.scarfwright.week.web;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.scarfwright.week.LaidWeek;
import org.scarfwright.week.LaidWeek.Held;
import org.scarfwright.week.WeekTimes;
import org.scarfwright.week.WorkStep;
import org.scarfwright.week.WorkStep.Span;

/**
 * A week as an iCalendar: an event for every step and one, which takes nobody's time, for every joint in clamps.
 *
 * <p><b>Source:</b> RFC 5545: lines end in CRLF and are folded at 75 octets (3.1), instants in UTC (3.3.5), text with backslash,
 * semicolon, comma and newline escaped (3.3.11), a UID for each event that stays the same (3.8.4.7).
 */
final class WeekCalendar {
    private static final String END = "\r\n";
    private static final int LONGEST_LINE = 75;
    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final LaidWeek week;

    WeekCalendar(LaidWeek week) {
        this.week = week;
    }

    String text() {
        StringBuilder out = new StringBuilder();
        line(out, "BEGIN:VCALENDAR");
        line(out, "VERSION:2.0");
        line(out, "PRODID:-//Scarfwright//Week//EN");
        line(out, "CALSCALE:GREGORIAN");
        Instant stamp = week.laying().map(LaidWeek.Laying::madeAt).orElse(Instant.EPOCH);
        Map<String, Held> held = new LinkedHashMap<>();
        for (LaidWeek.Day day : week.days()) {
            day.steps().forEach(s -> WeekTimes.of(s).ifPresent(span -> step(out, s, span, stamp)));
            day.inClamps()
                    .forEach(h ->
                            held.putIfAbsent(h.neck().plan() + " " + h.neck().title(), h));
        }
        held.values().forEach(h -> clamps(out, h, stamp));
        line(out, "END:VCALENDAR");
        return out.toString();
    }

    private static void step(StringBuilder out, WorkStep step, Span span, Instant stamp) {
        line(out, "BEGIN:VEVENT");
        line(out, "UID:step-" + step.id() + "@scarfwright");
        line(out, "DTSTAMP:" + UTC.format(stamp));
        line(out, "DTSTART:" + UTC.format(span.start()));
        line(out, "DTEND:" + UTC.format(span.end()));
        line(out, "SUMMARY:" + escaped(step.neck().title() + ": " + step.words()));
        String what = (step.needs().piece().map(p -> "Piece " + p + "\n").orElse("")
                        + step.needs().setUp().map(s -> "Saw at " + s + "\n").orElse(""))
                .strip();
        if (!what.isEmpty()) {
            line(out, "DESCRIPTION:" + escaped(what));
        }
        line(out, "CATEGORIES:" + escaped(step.kind().words().replace(",", "")));
        line(out, "END:VEVENT");
    }

    private static void clamps(StringBuilder out, Held held, Instant stamp) {
        line(out, "BEGIN:VEVENT");
        line(
                out,
                "UID:clamps-" + held.neck().plan() + "-" + uid(held.neck().order()) + "-"
                        + held.neck().number() + "@scarfwright");
        line(out, "DTSTAMP:" + UTC.format(stamp));
        line(out, "DTSTART:" + UTC.format(held.from()));
        line(out, "DTEND:" + UTC.format(held.opened()));
        line(out, "SUMMARY:" + escaped(held.neck().title() + ": in clamps"));
        line(out, "TRANSP:TRANSPARENT");
        line(out, "END:VEVENT");
    }

    /** Letters of an order's code that are safe everywhere; others by their number. */
    private static String uid(String code) {
        StringBuilder safe = new StringBuilder();
        code.codePoints().forEach(c -> {
            if (c < 128 && Character.isLetterOrDigit(c)) {
                safe.appendCodePoint(c);
            } else {
                safe.append('.').append(Integer.toHexString(c)).append('.');
            }
        });
        return safe.toString();
    }

    static String escaped(String text) {
        return text.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replace("\r", "")
                .replace("\n", "\\n");
    }

    /** Adds a line, folded so that none is longer than 75 octets and no character is cut in two. */
    static void line(StringBuilder out, String line) {
        int octets = 0;
        for (int i = 0; i < line.length(); ) {
            int c = line.codePointAt(i);
            String one = Character.toString(c);
            int size = one.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > LONGEST_LINE) {
                out.append(END).append(' ');
                octets = 1;
            }
            out.append(one);
            octets += size;
            i += Character.charCount(c);
        }
        out.append(END);
    }
}
