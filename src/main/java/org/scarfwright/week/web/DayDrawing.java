package org.scarfwright.week.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.week.LaidWeek;
import org.scarfwright.week.WeekTimes;
import org.scarfwright.week.WorkStep;
import org.scarfwright.week.WorkStep.Span;

/**
 * One day as a column, time running down: hands-on work solid at the left, joints in clamps hatched at the right, one lane for each
 * set of clamps.
 */
record DayDrawing(String id, String title, int height, List<Boxes> boxes, List<Line> hours) {
    static final int WIDTH = 160;

    private static final int HOUR = 26;
    private static final int LEFT = 20;
    private static final int RIGHT = 112;
    private static final int PEOPLE_GAP = 1;
    private static final String HELD = "w-held";
    private static final DateTimeFormatter TITLE = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);

    /**
     * A rectangle.
     *
     * @param path its outline, as SVG writes paths
     */
    record Box(String path, String title) {}

    /**
     * Rectangles that look alike.
     *
     * @param look the class that draws them
     * @param fill the pattern they are filled with; null for plain ones
     */
    record Boxes(String look, @Nullable String fill, List<Box> boxes) {}

    /** An hour across the column. */
    record Line(String y, String label) {}

    /** Hours and lanes that all days of a week are drawn with. */
    record Frame(int firstHour, int lastHour, int hands, int lanes, ZoneId zone) {}

    static DayDrawing of(LaidWeek.Day day, Frame frame) {
        LocalDate date = day.day();
        List<Row> work = new ArrayList<>();
        day.setUps().forEach(s -> work.add(new Row(new Span(s.start(), s.ready()), "w-set-up", "set up " + s.name())));
        for (WorkStep step : day.steps()) {
            WeekTimes.of(step)
                    .ifPresent(span -> work.add(new Row(span, step.isDone() ? "w-done" : "w-work", step.title())));
        }
        List<Row> held = day.inClamps().stream()
                .map(h -> new Row(
                        new Span(h.from(), h.opened()),
                        HELD,
                        "in clamps: " + h.neck().title()))
                .toList();
        List<Boxes> boxes = new ArrayList<>();
        lay(work, frame.hands(), LEFT, RIGHT - LEFT, date, frame)
                .forEach((look, laid) -> boxes.add(new Boxes(look, null, laid)));
        lay(held, frame.lanes(), RIGHT + 4, WIDTH - RIGHT - 4, date, frame)
                .forEach((look, laid) -> boxes.add(new Boxes(look, "url(#" + hatch(id(date)) + ")", laid)));
        List<Line> hours = new ArrayList<>();
        for (int h = frame.firstHour(); h <= frame.lastHour(); h++) {
            hours.add(new Line(number((h - frame.firstHour()) * (double) HOUR), Integer.toString(h)));
        }
        return new DayDrawing(
                id(date),
                TITLE.format(date) + ": hands-on work and joints in clamps by the hour; the list below says the same",
                (frame.lastHour() - frame.firstHour()) * HOUR,
                boxes,
                hours);
    }

    private static String id(LocalDate date) {
        return "day-" + date;
    }

    /** Id of the pattern of what is held. */
    public String hatch() {
        return hatch(id);
    }

    private static String hatch(String id) {
        return "hatch-" + id;
    }

    private record Row(Span span, String look, String title) {}

    /** Boxes by how they look. */
    private static Map<String, List<Box>> lay(
            List<Row> rows, int lanes, int left, int width, LocalDate day, Frame frame) {
        Map<String, List<Box>> laid = new LinkedHashMap<>();
        int count = Math.max(1, lanes);
        List<Instant> free = new ArrayList<>(java.util.Collections.nCopies(count, Instant.MIN));
        double lane = width / (double) count;
        String wide = number(Math.max(lane - PEOPLE_GAP, lane / 2));
        rows.stream().sorted(Comparator.comparing((Row r) -> r.span().start())).forEach(r -> {
            int at = 0;
            while (at < count - 1 && free.get(at).isAfter(r.span().start())) {
                at++;
            }
            free.set(at, r.span().end());
            double top = y(r.span().start(), day, frame);
            double bottom = y(r.span().end(), day, frame);
            if (bottom > top) {
                String path = "M" + number(left + at * lane) + " " + number(top) + "h" + wide + "v"
                        + number(bottom - top) + "h-" + wide + "z";
                laid.computeIfAbsent(r.look(), look -> new ArrayList<>()).add(new Box(path, r.title()));
            }
        });
        return laid;
    }

    private static double y(Instant at, LocalDate day, Frame frame) {
        var there = at.atZone(frame.zone());
        double hour = there.toLocalDate().isBefore(day)
                ? 0
                : there.toLocalDate().isAfter(day) ? 24 : there.toLocalTime().toSecondOfDay() / 3600.0;
        return Math.max(0, Math.min(hour, frame.lastHour()) - frame.firstHour()) * HOUR;
    }

    /** Nothing of a day lies left of its edge or above it, so nothing is negative. */
    private static String number(double value) {
        long tenths = Math.round(value * 10);
        return tenths / 10 + "." + tenths % 10;
    }
}
