package org.scarfwright.week.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.Optional;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.validate.ValidationResult;
import org.junit.jupiter.api.Test;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.StepKind;
import org.scarfwright.week.LaidWeek;
import org.scarfwright.week.WorkStep;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.WorkStep.Needs;
import org.scarfwright.week.WorkStep.Part;
import org.scarfwright.week.WorkStep.Progress;
import org.scarfwright.week.WorkStep.Span;

/** Read back by a general iCalendar library, which shares nothing with what wrote it. */
class WeekCalendarTest {
    private static final Instant START = Instant.parse("2026-11-30T08:00:00Z");
    private static final String LONG_ORDER = "Ö-7; the long one, with \\ and äöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöü";

    private static WorkStep step(long id, String order, StepKind kind) {
        return new WorkStep(
                id,
                0,
                new Neck(3, "2026-W49", order, 1),
                1,
                kind,
                Part.HEAD,
                new Needs(Optional.of("H;1"), Optional.of("band"), Optional.of("10° at 20 mm, on band")),
                20,
                Optional.of(new Span(START.plusSeconds(60 * id), START.plusSeconds(60 * id + 1200))),
                Optional.empty(),
                Progress.NONE);
    }

    private static LaidWeek week(List<WorkStep> steps) {
        LaidWeek.Held held = new LaidWeek.Held(
                new Neck(3, "2026-W49", LONG_ORDER, 1),
                START,
                START.plusSeconds(4 * 3600),
                START.plusSeconds(24 * 3600));
        return new LaidWeek(
                new IsoWeek(2026, 49),
                Optional.of(new LaidWeek.Laying(
                        new IsoWeek(2026, 49), Instant.parse("2026-11-25T12:00:00Z"), "exact", 5, "", List.of())),
                false,
                List.of(new LaidWeek.Day(
                        LocalDate.of(2026, 11, 30), Optional.empty(), List.of(), steps, List.of(), List.of(held))),
                List.of(),
                0,
                List.of());
    }

    private static Calendar read(String text) throws Exception {
        return new CalendarBuilder().build(new StringReader(text));
    }

    @Test
    void anotherProgramReadsEveryEventBack() throws Exception {
        String text = new WeekCalendar(
                        week(List.of(step(1, "A-101", StepKind.CUT), step(2, LONG_ORDER, StepKind.GLUE))))
                .text();

        Calendar calendar = read(text);

        ValidationResult valid = calendar.validate();
        assertThat(valid.getEntries()).isEmpty();
        List<VEvent> events = calendar.getComponents("VEVENT");
        assertThat(events).hasSize(3);
        VEvent cut = events.get(0);
        assertThat(cut.getUid().orElseThrow().getValue()).isEqualTo("step-1@scarfwright");
        assertThat(cut.getSummary().getValue()).isEqualTo("A-101 no. 1: cut the bevel (head)");
        assertThat(cut.getDescription().getValue()).isEqualTo("Piece H;1\nSaw at 10° at 20 mm, on band");
        Temporal begins = cut.getDateTimeStart().getDate();
        Temporal ends = cut.getDateTimeEnd().getDate();
        assertThat(Instant.from(begins)).isEqualTo(START.plusSeconds(60));
        assertThat(Instant.from(ends)).isEqualTo(START.plusSeconds(1260));
        assertThat(events.get(1).getSummary().getValue()).isEqualTo(LONG_ORDER + " no. 1: glue and clamp (head)");
        assertThat(events.get(2).getSummary().getValue()).isEqualTo(LONG_ORDER + " no. 1: in clamps");
        assertThat(events)
                .extracting(e -> e.getUid().orElseThrow().getValue())
                .doesNotHaveDuplicates()
                .allSatisfy(uid -> assertThat(uid).matches("[\\x21-\\x7e]+"));
    }

    @Test
    void everyLineEndsInCrlfAndNoneIsLongerThan75Octets() {
        String text = new WeekCalendar(week(List.of(step(2, LONG_ORDER, StepKind.GLUE)))).text();

        assertThat(text).endsWith("END:VCALENDAR\r\n");
        assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
        assertThat(text.split("\r\n"))
                .hasSizeGreaterThan(15)
                .allSatisfy(line ->
                        assertThat(line.getBytes(StandardCharsets.UTF_8).length).isBetween(1, 75));
    }

    @Test
    void theSameStepKeepsItsUidWhenItIsLaidAgain() {
        WorkStep first = step(7, "A-101", StepKind.CUT);
        WorkStep moved = new WorkStep(
                7,
                3,
                first.neck(),
                1,
                first.kind(),
                first.part(),
                first.needs(),
                20,
                Optional.of(new Span(START.plusSeconds(86_400), START.plusSeconds(87_600))),
                Optional.empty(),
                Progress.NONE);
        assertThat(List.of(first, moved))
                .allSatisfy(s ->
                        assertThat(new WeekCalendar(week(List.of(s))).text()).contains("UID:step-7@scarfwright\r\n"));
    }

    @Test
    void aWeekWithoutWorkIsACalendarWithoutEvents() throws Exception {
        LaidWeek empty =
                new LaidWeek(new IsoWeek(2026, 49), Optional.empty(), false, List.of(), List.of(), 0, List.of());
        assertThat(read(new WeekCalendar(empty).text()).<VEvent>getComponents("VEVENT"))
                .isEmpty();
    }
}
