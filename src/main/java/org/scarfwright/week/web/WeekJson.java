package org.scarfwright.week.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.LaidWeek;
import org.scarfwright.week.WorkStep;
import org.scarfwright.week.WorkStep.Span;

/**
 * A week on the wire; instants in UTC.
 *
 * @param looksOn a better schedule is still looked for; ask again to see whether one was found
 */
record WeekJson(
        String week,
        @Nullable LayingJson laying,
        boolean looksOn,
        List<DayJson> days,
        List<RemarkJson> remarks,
        int necksNotLaid,
        List<String> necksBeyondTheWeek) {

    /** How it was laid. */
    record LayingJson(
            String upToWeek,
            Instant madeAt,
            String engine,
            int milliseconds,
            String note,
            boolean proved,
            List<LevelJson> levels) {}

    /** A measure; no schedule as good on the levels before has less than the bound. */
    record LevelJson(
            @Schema(allowableValues = {"late", "setUps", "days"})
            String measure,

            @Schema(minimum = "0") long value,
            @Schema(minimum = "0") long bound) {}

    /** A day. */
    record DayJson(
            LocalDate day,
            @Nullable String closed,
            List<StepJson> steps,
            List<SetUpJson> setUps,
            List<HeldJson> inClamps) {}

    /** A step. */
    record StepJson(
            long id,
            long plan,
            String order,
            @Schema(minimum = "1") int number,

            @Schema(allowableValues = {"flatten", "cut", "true", "fit", "glue", "unclamp", "square-up"})
            String kind,

            @Schema(allowableValues = {"neck", "head", "both"})
            String part,

            String words,
            @Nullable String piece,
            @Nullable String machine,
            @Nullable String setUp,
            @Schema(minimum = "1", maximum = "480") int minutes,
            @Nullable Instant plannedStart,
            @Nullable Instant plannedEnd,
            @Nullable LocalDate pinnedDay,

            @Schema(allowableValues = {"open", "started", "done", "stopped"})
            String state,

            @Nullable Instant doneAt,
            @Nullable Instant clampedUntil,
            @Nullable Instant curedAt,
            @Nullable String reason) {}

    /** A saw brought to a setting. */
    record SetUpJson(String machine, String name, Instant start, Instant ready, Instant end) {}

    /** A joint in clamps, then curing. */
    record HeldJson(String order, int number, Instant from, Instant opened, Instant cured) {}

    /** What the schedule says of a neck. */
    record RemarkJson(String order, int number, String kind, String sentence) {}

    static WeekJson of(LaidWeek w) {
        return new WeekJson(
                w.week().toString(),
                w.laying()
                        .map(l -> new LayingJson(
                                l.week().toString(),
                                l.madeAt(),
                                l.engine(),
                                l.milliseconds(),
                                l.note(),
                                l.proved(),
                                l.levels().stream()
                                        .map(x -> new LevelJson(x.name(), x.value(), x.bound()))
                                        .toList()))
                        .orElse(null),
                w.looksOn(),
                w.days().stream().map(WeekJson::day).toList(),
                w.remarks().stream()
                        .map(r -> new RemarkJson(r.order(), r.number(), word(r.kind()), r.sentence()))
                        .toList(),
                w.unlaid(),
                w.beyond().stream().map(WorkStep.Neck::title).toList());
    }

    private static DayJson day(LaidWeek.Day d) {
        return new DayJson(
                d.day(),
                d.closed().orElse(null),
                d.steps().stream().map(WeekJson::step).toList(),
                d.setUps().stream()
                        .map(s -> new SetUpJson(s.machine(), s.name(), s.start(), s.ready(), s.end()))
                        .toList(),
                d.inClamps().stream()
                        .map(h -> new HeldJson(h.neck().order(), h.neck().number(), h.from(), h.opened(), h.cured()))
                        .toList());
    }

    static StepJson step(WorkStep s) {
        return new StepJson(
                s.id(),
                s.neck().plan(),
                s.neck().order(),
                s.neck().number(),
                word(s.kind()),
                word(s.part()),
                s.words(),
                s.needs().piece().orElse(null),
                s.needs().machine().orElse(null),
                s.needs().setUp().orElse(null),
                s.minutes(),
                s.planned().map(Span::start).orElse(null),
                s.planned().map(Span::end).orElse(null),
                s.pinned().orElse(null),
                word(s.progress().state()),
                s.progress().doneAt().orElse(null),
                s.progress().clampedUntil().orElse(null),
                s.progress().curedAt().orElse(null),
                s.progress().reason().orElse(null));
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** @throws InvalidInputException with a sentence that says what would be right */
    static IsoWeek week(String typed) {
        try {
            return IsoWeek.parse(typed);
        } catch (MeasureFormatException e) {
            throw new InvalidInputException(new FieldError("/week", "Week", typed, String.valueOf(e.getMessage())));
        }
    }

    /** @throws InvalidInputException with a sentence that says what would be right */
    static LocalDate day(String typed) {
        try {
            return LocalDate.parse(typed.strip());
        } catch (DateTimeException e) {
            throw new InvalidInputException(new FieldError(
                    "/day",
                    "Day",
                    typed,
                    (typed.isBlank() ? "is empty" : "“" + typed.strip() + "” is not a day")
                            + "; write for example 2026-12-04"));
        }
    }
}
