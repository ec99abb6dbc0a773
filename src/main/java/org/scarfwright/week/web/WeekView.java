package org.scarfwright.week.web;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.week.LaidWeek;
import org.scarfwright.week.LaidWeek.Laying;
import org.scarfwright.week.LaidWeek.Level;
import org.scarfwright.week.LaidWeek.Remark;
import org.scarfwright.week.WeekTimes;
import org.scarfwright.week.WorkStep;
import org.scarfwright.week.WorkStep.Span;

/**
 * A week as its page shows it.
 *
 * @param meaning what the measures of the laying mean, a sentence each
 */
record WeekView(
        IsoWeek week,
        String before,
        String after,
        Optional<Laying> laying,
        boolean looksOn,
        List<String> meaning,
        List<DayView> days,
        List<Remark> late,
        List<Remark> leftOut,
        List<Remark> notes,
        int unlaid,
        String beyond,
        boolean empty) {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter THERE = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);
    private static final int FIRST_HOUR = 8;
    private static final int LAST_HOUR = 17;

    /**
     * One column.
     *
     * @param hours shop hours in words, or why it is closed
     * @param clamps joints in clamps, a line each
     */
    record DayView(
            java.time.LocalDate day,
            boolean open,
            String hours,
            DayDrawing drawing,
            List<Run> runs,
            List<String> clamps) {}

    /** Steps of one kind one after another, or a set-up. */
    record Run(String times, String words, boolean setUp, List<Link> steps) {}

    /**
     * A step in a run.
     *
     * @param words its neck, and the part or piece it is done on
     * @param after what is said behind it: how far it is, and what parts it from the next one
     */
    record Link(long id, String words, String after) {}

    static WeekView of(LaidWeek w, int hands, ZoneId zone) {
        DayDrawing.Frame frame = frame(w, hands, zone);
        List<DayView> days = w.days().stream().map(d -> day(d, frame)).toList();
        return new WeekView(
                w.week(),
                IsoWeek.of(w.week().monday().minusDays(7)).toString(),
                IsoWeek.of(w.week().monday().plusDays(7)).toString(),
                w.laying(),
                w.looksOn(),
                w.laying().map(WeekView::meaning).orElse(List.of()),
                days,
                of(w, Remark.Kind.LATE),
                of(w, Remark.Kind.LEFT_OUT),
                of(w, Remark.Kind.NOTE),
                w.unlaid(),
                w.beyond().stream().map(WorkStep.Neck::title).collect(Collectors.joining(", ")),
                days.stream().allMatch(d -> d.runs().isEmpty() && d.clamps().isEmpty()));
    }

    private static List<Remark> of(LaidWeek w, Remark.Kind kind) {
        return w.remarks().stream().filter(r -> r.kind() == kind).toList();
    }

    private static DayDrawing.Frame frame(LaidWeek w, int hands, ZoneId zone) {
        int first = FIRST_HOUR;
        int last = LAST_HOUR;
        int lanes = 1;
        for (LaidWeek.Day d : w.days()) {
            for (Stretch s : d.hours()) {
                first = Math.min(first, s.from().getHour());
                last = Math.max(
                        last,
                        s.to().equals(LocalTime.MIDNIGHT) ? 24 : s.to().getHour() + (s.to().getMinute() > 0 ? 1 : 0));
            }
            for (LaidWeek.Held h : d.inClamps()) {
                long together = d.inClamps().stream()
                        .filter(o -> !o.from().isAfter(h.from()) && o.opened().isAfter(h.from()))
                        .count();
                lanes = Math.max(lanes, (int) together);
            }
        }
        return new DayDrawing.Frame(first, last, hands, lanes, zone);
    }

    private static DayView day(LaidWeek.Day d, DayDrawing.Frame frame) {
        String hours = d.closed()
                .orElseGet(() -> d.hours().stream()
                        .map(s -> TIME.format(s.from()) + "–" + TIME.format(s.to()))
                        .collect(Collectors.joining(", ")));
        List<String> clamps = d.inClamps().stream()
                .map(h -> h.neck().title() + " until " + THERE.format(h.opened().atZone(frame.zone())))
                .toList();
        return new DayView(
                d.day(), d.closed().isEmpty(), hours, DayDrawing.of(d, frame), runs(d, frame.zone()), clamps);
    }

    private static List<Run> runs(LaidWeek.Day d, ZoneId zone) {
        record Timed(Instant start, Run run) {}
        List<Timed> runs = new ArrayList<>();
        d.setUps()
                .forEach(s -> runs.add(new Timed(
                        s.start(),
                        new Run(times(new Span(s.start(), s.ready()), zone), "set up " + s.name(), true, List.of()))));
        List<WorkStep> together = new ArrayList<>();
        for (WorkStep step : d.steps()) {
            if (!together.isEmpty() && !alike(together.get(0), step)) {
                runs.add(new Timed(span(together.get(0)).start(), run(together, zone)));
                together.clear();
            }
            together.add(step);
        }
        if (!together.isEmpty()) {
            runs.add(new Timed(span(together.get(0)).start(), run(together, zone)));
        }
        return runs.stream()
                .sorted(Comparator.comparing(Timed::start))
                .map(Timed::run)
                .toList();
    }

    private static boolean alike(WorkStep a, WorkStep b) {
        return a.kind() == b.kind() && a.needs().setUp().equals(b.needs().setUp());
    }

    private static Run run(List<WorkStep> steps, ZoneId zone) {
        Instant end = steps.stream()
                .map(s -> span(s).end())
                .max(Comparator.naturalOrder())
                .orElseThrow();
        WorkStep first = steps.get(0);
        boolean done = steps.stream().allMatch(WorkStep::isDone);
        String words =
                shortly(first.kind()) + first.needs().setUp().map(s -> ", " + s).orElse("") + (done ? ", done" : "");
        return new Run(
                times(new Span(span(first).start(), end), zone),
                words,
                false,
                IntStream.range(0, steps.size())
                        .mapToObj(i -> link(steps.get(i), done, i < steps.size() - 1))
                        .toList());
    }

    /** The glossary's name of a step: a column is narrow, on paper too. */
    private static String shortly(StepKind kind) {
        return switch (kind) {
            case FLATTEN -> "flatten";
            case CUT -> "cut";
            case TRUE -> "true";
            case FIT -> "fit";
            case GLUE -> "glue";
            case UNCLAMP -> "unclamp";
            case SQUARE_UP -> "square up";
        };
    }

    /** @param said that it is done is said of its run */
    private static Link link(WorkStep s, boolean said, boolean more) {
        String part = switch (s.part()) {
            case BOTH -> "";
            case NECK -> s.kind() == StepKind.FLATTEN ? s.needs().piece().orElse("") : "neck";
            case HEAD -> s.kind() == StepKind.FLATTEN ? s.needs().piece().orElse("") : "head";
        };
        String state = switch (s.progress().state()) {
            case OPEN -> "";
            case STARTED -> " (begun)";
            case STOPPED -> " (stopped)";
            case DONE -> said ? "" : " (done)";
        };
        return new Link(
                s.id(),
                s.neck().title() + (part.isEmpty() ? "" : " " + part),
                state + (s.pinned().isPresent() ? " (pinned)" : "") + (more ? ", " : ""));
    }

    private static Span span(WorkStep step) {
        return WeekTimes.of(step).orElseThrow();
    }

    static String times(Span span, ZoneId zone) {
        return TIME.format(span.start().atZone(zone)) + "–"
                + TIME.format(span.end().atZone(zone));
    }

    private static List<String> meaning(Laying laying) {
        List<String> sentences = new ArrayList<>();
        for (Level l : laying.levels()) {
            String measured = switch (l.name()) {
                case "late" -> l.value() == 0 ? "Nothing is late" : "What is late weighs " + l.value() + " by priority";
                case "setUps" -> l.value() + (l.value() == 1 ? " set-up of a saw" : " set-ups of saws");
                default -> "everything is done on working day " + l.value();
            };
            sentences.add(measured
                    + (l.proved()
                            ? l.value() == 0 ? "" : ", proved: fewer is not possible"
                            : "; fewer than " + l.bound() + " is not possible, fewer than " + l.value() + " may be")
                    + ".");
        }
        return sentences.stream()
                .map(s -> s.substring(0, 1).toUpperCase(Locale.ROOT) + s.substring(1))
                .toList();
    }
}
