package org.scarfwright.week;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.RackImport;
import org.scarfwright.shop.DayOff;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.shop.WorkshopBook.VersionedWorkshop;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.week.LaidWeek.Day;
import org.scarfwright.week.LaidWeek.Remark;
import org.scarfwright.week.WorkStep.State;
import org.scarfwright.week.schedule.CpSatScheduler;
import org.scarfwright.week.schedule.GreedyScheduler;
import org.scarfwright.week.schedule.Schedule;
import org.scarfwright.week.schedule.ScheduleProblem;
import org.scarfwright.week.schedule.Scheduler;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** Laying a week and working through it, whichever engine keeps it. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class WeekContract {
    private static final IsoWeek WEEK = new IsoWeek(2026, 49);
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);

    @Autowired
    WeekWork work;

    @Autowired
    Bench bench;

    @Autowired
    Floor floor;

    @Autowired
    GivenUpWork givenUp;

    @Autowired
    JdbcWork rows;

    @Autowired
    Plans plans;

    @Autowired
    Designs designs;

    @Autowired
    WorkshopBook book;

    @Autowired
    RackImport rackImport;

    @Autowired
    Searches searches;

    @Autowired
    LongerSearch longer;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    private Plan accepted() {
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,620,90,25,mm
                N2,maple_sugar,640,90,25,mm
                H1,maple_sugar,420,90,22,mm
                H2,maple_sugar,420,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        post("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 2, "due": "2026-12-04", "week": "2026-W49"}""");
        return plans.accept(plans.make(WEEK).id());
    }

    private void post(String path, String json) {
        assertThat(mvc.post().uri(path).contentType(MediaType.APPLICATION_JSON).content(json))
                .hasStatus(HttpStatus.CREATED);
    }

    /** The same work and bench on another clock. */
    private WeekService workAt(Instant now) {
        return new WeekService(floor, givenUp, rows, book, designs, searches, longer, transaction, at(now));
    }

    private BenchService benchAt(Instant now) {
        return new BenchService(floor, rows, at(now));
    }

    private Clock at(Instant now) {
        return Clock.fixed(now, clock.getZone());
    }

    private Instant instant(LocalDate day, int hour) {
        return day.atTime(hour, 0).atZone(zone()).toInstant();
    }

    private ZoneId zone() {
        return clock.getZone();
    }

    private void change(java.util.function.UnaryOperator<Workshop> how) {
        VersionedWorkshop now = book.workshop();
        assertThat(book.change(now.version(), how.apply(now.workshop()))).isTrue();
    }

    private static Workshop with(Workshop w, int hands, int clamps, String celsius, Optional<String> glue) {
        return new Workshop(
                w.hours(),
                hands,
                w.people(),
                clamps,
                new BigDecimal(celsius),
                glue,
                w.setUpMinutes(),
                w.minutes(),
                w.keepsMinutes());
    }

    private static List<WorkStep> steps(LaidWeek week) {
        return week.days().stream().flatMap(d -> d.steps().stream()).toList();
    }

    private WorkStep step(LaidWeek week, StepKind kind) {
        return steps(week).stream().filter(s -> s.kind() == kind).findFirst().orElseThrow();
    }

    @Test
    void laysEveryStepOfAnAcceptedPlanInsideShopHoursAndInOrder() {
        accepted();

        LaidWeek week = workAt(instant(MONDAY.minusDays(3), 12)).lay(WEEK);

        List<WorkStep> steps = steps(week);
        assertThat(steps).hasSizeGreaterThanOrEqualTo(2 * 8);
        assertThat(week.unlaid()).isZero();
        assertThat(week.remarks()).isEmpty();
        assertThat(week.laying().orElseThrow().proved()).isTrue();
        for (Day day : week.days()) {
            for (WorkStep s : day.steps()) {
                LocalTime from =
                        s.planned().orElseThrow().start().atZone(zone()).toLocalTime();
                assertThat(from).isBetween(LocalTime.of(8, 0), LocalTime.of(17, 0));
            }
        }
        for (WorkStep s : steps) {
            for (WorkStep before : StepOrder.before(s, steps)) {
                assertThat(before.planned().orElseThrow().end())
                        .isBeforeOrEqualTo(s.planned().orElseThrow().start());
            }
        }
        WorkStep glued = step(week, StepKind.GLUE);
        WorkStep squared = steps.stream()
                .filter(s -> s.kind() == StepKind.SQUARE_UP && s.neck().equals(glued.neck()))
                .findFirst()
                .orElseThrow();
        assertThat(Duration.between(
                        glued.planned().orElseThrow().end(),
                        squared.planned().orElseThrow().start()))
                .isGreaterThanOrEqualTo(Duration.ofHours(24));
    }

    @Test
    void aWeekWithoutAnAcceptedPlanIsRefusedWithASentence() {
        assertThatThrownBy(() -> work.lay(WEEK))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("has no accepted plan");
        assertThat(work.week(WEEK).laying()).isEmpty();
    }

    @Test
    void aNeckIsWorkedThroughStepByStepAndNeverOutOfOrder() {
        accepted();
        LaidWeek week = work.lay(WEEK);
        WorkStep glue = step(week, StepKind.GLUE);
        List<WorkStep> ofNeck = rows.ofPlan(glue.neck().plan()).stream()
                .filter(s -> s.neck().equals(glue.neck()))
                .toList();
        BenchService monday = benchAt(instant(MONDAY, 9));
        assertThatThrownBy(() -> monday.start(glue.id(), "Ada"))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("It waits for");
        for (WorkStep s : ofNeck) {
            if (s.kind() == StepKind.UNCLAMP) {
                break;
            }
            StepOrder.before(s, rows.ofPlan(s.neck().plan())).stream()
                    .filter(b -> !b.isDone())
                    .forEach(b -> monday.done(b.id(), OptionalInt.empty(), ""));
            assertThat(monday.start(s.id(), "Ada").step().progress().state()).isEqualTo(State.STARTED);
            assertThat(monday.done(s.id(), OptionalInt.of(12), "Ada")
                            .step()
                            .progress()
                            .minutes())
                    .hasValue(12);
        }
        WorkStep glued = monday.card(glue.id()).step();
        assertThat(glued.progress().clampedUntil()).contains(instant(MONDAY, 13));
        assertThat(glued.progress().curedAt()).contains(instant(MONDAY.plusDays(1), 9));
        WorkStep unclamp = ofNeck.get(ofNeck.size() - 2);
        WorkStep square = ofNeck.get(ofNeck.size() - 1);
        assertThatThrownBy(() -> monday.done(unclamp.id(), OptionalInt.empty(), ""))
                .hasMessageContaining("stays in clamps until Mon 30 Nov, 13:00");
        benchAt(instant(MONDAY, 13)).done(unclamp.id(), OptionalInt.empty(), "");
        assertThatThrownBy(() -> benchAt(instant(MONDAY, 16)).start(square.id(), ""))
                .hasMessageContaining("cures until Tue 1 Dec, 09:00");
        assertThat(bench.curing())
                .singleElement()
                .satisfies(c -> assertThat(c.opened()).isTrue());
        Bench.Card done = benchAt(instant(MONDAY.plusDays(1), 9)).done(square.id(), OptionalInt.empty(), "");
        assertThat(done.step().isDone()).isTrue();
        assertThat(bench.curing()).isEmpty();
        assertThatThrownBy(() -> monday.takeBack(glue.id())).hasMessageContaining("was begun after it");
    }

    @Test
    void whatIsDoneStaysWhenTheWeekIsLaidAgainAndClampsStayShut() {
        accepted();
        LaidWeek week = workAt(instant(MONDAY.minusDays(3), 12)).lay(WEEK);
        WorkStep glue = step(week, StepKind.GLUE);
        BenchService monday = benchAt(instant(MONDAY, 10));
        rows.ofPlan(glue.neck().plan()).stream()
                .filter(s -> s.kind().compareTo(StepKind.UNCLAMP) < 0)
                .filter(s -> s.neck().equals(glue.neck()) || s.kind() == StepKind.FLATTEN)
                .forEach(s -> monday.done(s.id(), OptionalInt.empty(), ""));

        LaidWeek again = workAt(instant(MONDAY, 10)).lay(WEEK);

        assertThat(steps(again))
                .filteredOn(WorkStep::isDone)
                .extracting(WorkStep::kind)
                .contains(StepKind.GLUE, StepKind.TRUE);
        assertThat(steps(again))
                .filteredOn(s -> s.neck().equals(glue.neck()) && s.kind() == StepKind.UNCLAMP)
                .singleElement()
                .satisfies(s -> assertThat(s.planned().orElseThrow().start()).isAfterOrEqualTo(instant(MONDAY, 14)));
        assertThat(steps(again))
                .filteredOn(s -> !s.isDone())
                .allSatisfy(s -> assertThat(s.planned().orElseThrow().start()).isAfterOrEqualTo(instant(MONDAY, 10)));
    }

    @Test
    void facesTruedOnAnEarlierDayAreTruedOnceMore() {
        accepted();
        LaidWeek week = workAt(instant(MONDAY.minusDays(3), 12)).lay(WEEK);
        WorkStep glue = step(week, StepKind.GLUE);
        BenchService monday = benchAt(instant(MONDAY, 16));
        rows.ofPlan(glue.neck().plan()).stream()
                .filter(s -> s.kind().compareTo(StepKind.GLUE) < 0)
                .filter(s -> s.neck().equals(glue.neck()) || s.kind() == StepKind.FLATTEN)
                .forEach(s -> monday.done(s.id(), OptionalInt.empty(), ""));
        assertThatThrownBy(() -> benchAt(instant(MONDAY.plusDays(1), 9)).start(glue.id(), ""))
                .hasMessageContaining("were trued on Mon 30 Nov");

        LaidWeek again = workAt(instant(MONDAY.plusDays(1), 8)).lay(WEEK);

        assertThat(again.remarks())
                .anyMatch(r -> r.kind() == Remark.Kind.NOTE && r.sentence().contains("once more"));
        assertThat(steps(again))
                .filteredOn(s -> s.neck().equals(glue.neck()) && s.kind() == StepKind.TRUE)
                .hasSize(2)
                .noneMatch(WorkStep::isDone);
    }

    @Test
    void aNeckThatIsGivenUpLeavesTheWeekAndTheBench() {
        Plan plan = accepted();
        WeekService friday = workAt(instant(MONDAY.minusDays(3), 12));
        friday.lay(WEEK);
        WorkStep.Neck first = new WorkStep.Neck(plan.id(), plan.week(), "O-1", 1);
        Set<String> needed = plan.pairings().stream()
                .filter(p -> p.number() == 2)
                .flatMap(p -> p.pieces().stream())
                .collect(Collectors.toSet());

        plans.giveUp(first.planned(), "", "the blank split");

        LaidWeek week = friday.week(WEEK);
        assertThat(steps(week)).isNotEmpty().noneMatch(s -> s.neck().equals(first));
        assertThat(week.unlaid())
                .as("a piece whose flattening went over to the other neck has no time yet")
                .isLessThanOrEqualTo(1);
        assertThatThrownBy(() -> bench.start(
                        rows.ofPlan(plan.id()).stream()
                                .filter(s -> s.neck().equals(first) && s.kind() == StepKind.CUT)
                                .findFirst()
                                .orElseThrow()
                                .id(),
                        ""))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("was given up: the blank split");
        LaidWeek again = friday.lay(WEEK);
        assertThat(again.unlaid()).isZero();
        assertThat(again.remarks()).isEmpty();
        assertThat(steps(again)).noneMatch(s -> s.neck().equals(first));
        assertThat(steps(again))
                .filteredOn(s -> s.kind() == StepKind.FLATTEN)
                .extracting(s -> s.needs().piece().orElseThrow())
                .containsExactlyInAnyOrderElementsOf(needed);

        plans.makeAfterAll(first.planned());
        LaidWeek after = friday.lay(WEEK);
        assertThat(after.unlaid()).isZero();
        assertThat(steps(after)).anyMatch(s -> s.neck().equals(first));
    }

    @Test
    void aPieceTwoNecksShareIsFlattenedForTheOneThatIsStillMade() {
        Plan plan = accepted();
        WeekService friday = workAt(instant(MONDAY.minusDays(3), 12));
        friday.lay(WEEK);
        List<WorkStep> steps = rows.ofPlan(plan.id());
        WorkStep flatten = steps.stream()
                .filter(s -> s.kind() == StepKind.FLATTEN)
                .filter(f -> steps.stream()
                                .filter(s -> s.kind() == StepKind.CUT
                                        && s.needs().piece().equals(f.needs().piece()))
                                .map(WorkStep::neck)
                                .distinct()
                                .count()
                        == 2)
                .findFirst()
                .orElseThrow(() -> new AssertionError("the plan shares no piece between its necks"));

        plans.giveUp(flatten.neck().planned(), "", "the other part split");

        WorkStep moved = rows.find(flatten.id()).orElseThrow();
        assertThat(moved.neck()).isNotEqualTo(flatten.neck());
        assertThat(moved.place()).isEqualTo(1);
        List<WorkStep> ofOther = rows.ofPlan(plan.id()).stream()
                .filter(s -> s.neck().equals(moved.neck()))
                .toList();
        assertThat(ofOther).extracting(WorkStep::place).doesNotHaveDuplicates();
        assertThat(steps(friday.lay(WEEK))).extracting(WorkStep::id).contains(flatten.id());
    }

    @Test
    void anEarlierWeekCountsWhileSomethingOfItIsLeftToDo() {
        Plan plan = accepted();
        IsoWeek next = new IsoWeek(2026, 50);
        assertThat(floor.acceptedUpTo(next)).as("never laid, its wood waits").containsExactly(plan.id());
        work.lay(WEEK);
        assertThat(floor.acceptedUpTo(next)).as("steps are open").hasSize(1);
        jdbc.sql("update work_step set state = 'DONE', done_at = current_timestamp")
                .update();
        assertThat(floor.acceptedUpTo(next)).as("all is done").isEmpty();
        assertThat(floor.acceptedUpTo(WEEK)).as("its own week").hasSize(1);
        jdbc.sql("delete from work_step").update();
        jdbc.sql("update piece set state = 'USED_UP' where state = 'RESERVED'").update();
        assertThat(floor.acceptedUpTo(next)).as("never laid, all cut").isEmpty();
    }

    @Test
    void aNeckGivenUpBeforeTheWeekIsLaidIsNotLaid() {
        Plan plan = accepted();
        WorkStep.Neck first = new WorkStep.Neck(plan.id(), plan.week(), "O-1", 1);
        plans.giveUp(first.planned(), "", "the blank split");
        LaidWeek week = workAt(instant(MONDAY.minusDays(3), 12)).lay(WEEK);
        assertThat(steps(week)).isNotEmpty().noneMatch(s -> s.neck().equals(first));
        assertThat(week.unlaid()).isZero();
    }

    @Test
    void aJointThatFailedLeavesTheClocks() {
        Plan plan = accepted();
        work.lay(WEEK);
        WorkStep.Neck first = new WorkStep.Neck(plan.id(), plan.week(), "O-1", 1);
        BenchService monday = benchAt(instant(MONDAY, 9));
        rows.ofPlan(plan.id()).stream()
                .filter(s -> s.kind() == StepKind.FLATTEN || s.neck().equals(first))
                .filter(s -> s.kind().compareTo(StepKind.UNCLAMP) < 0)
                .forEach(s -> monday.done(s.id(), OptionalInt.empty(), ""));
        assertThat(bench.curing()).hasSize(1);
        plans.giveUp(first.planned(), "", "the joint slipped");
        assertThat(bench.curing()).isEmpty();
        assertThat(workAt(instant(MONDAY, 10)).week(WEEK).days())
                .allSatisfy(
                        d -> assertThat(d.inClamps()).noneMatch(h -> h.neck().equals(first)));
    }

    /** Whether a joint stays in clamps for hours, over weeks or until today, each week it spends there shows it, and no other. */
    @Test
    void aJointIsShownInEveryWeekItSpendsInClampsHoweverLong() {
        Plan plan = accepted();
        work.lay(WEEK);
        WorkStep.Neck neck = new WorkStep.Neck(plan.id(), plan.week(), "O-1", 1);
        for (int weeks = 0; weeks <= 3; weeks++) {
            // Glued on a Thursday, opened on the Friday of the same week or of a later one.
            Instant glued = instant(MONDAY.plusDays(3), 15);
            Instant opened = instant(MONDAY.plusDays(4 + 7L * weeks), 9);
            done(neck, StepKind.GLUE, glued);
            done(neck, StepKind.UNCLAMP, opened);
            for (int shown = -2; shown <= 5; shown++) {
                IsoWeek week = IsoWeek.of(MONDAY.plusDays(7L * shown));
                List<LocalDate> days = work.week(week).days().stream()
                        .filter(d ->
                                d.inClamps().stream().anyMatch(h -> h.neck().equals(neck)))
                        .map(Day::day)
                        .toList();
                List<LocalDate> expected = MONDAY.plusDays(3)
                        .datesUntil(MONDAY.plusDays(5 + 7L * weeks))
                        .filter(d -> IsoWeek.of(d).equals(week))
                        .toList();
                assertThat(days)
                        .as("in clamps for %s weeks, week %s", weeks, week)
                        .isEqualTo(expected);
            }
        }
        jdbc.sql(
                        "update work_step set done_at = null, started_at = null, state = 'OPEN', planned_start = null, planned_end = null"
                                + " where kind = 'UNCLAMP' and order_code = 'O-1' and neck_number = 1")
                .update();
        assertThat(work.week(WEEK).days().get(3).inClamps())
                .as("nobody took them off")
                .anyMatch(h -> h.neck().equals(neck));
    }

    private void done(WorkStep.Neck neck, StepKind kind, Instant at) {
        jdbc.sql(
                        "update work_step set state = 'DONE', started_at = :begun, done_at = :at, clamped_until ="
                                + " case when kind = 'GLUE' then cast(:until as timestamp with time zone) end, cured_at ="
                                + " case when kind = 'GLUE' then cast(:until as timestamp with time zone) end where kind = :kind and order_code = :order and neck_number = :number")
                .param("begun", at.minusSeconds(600).atOffset(ZoneOffset.UTC))
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("until", at.plus(4, ChronoUnit.HOURS).atOffset(ZoneOffset.UTC))
                .param("kind", kind.name())
                .param("order", neck.order())
                .param("number", neck.number())
                .update();
    }

    /** Somebody who begins on Friday and ends on Monday did it on Friday. */
    @Test
    void aStepBegunInAWeekAndDoneInTheNextLiesWhereItWasBegun() {
        Plan plan = accepted();
        work.lay(WEEK);
        WorkStep.Neck neck = new WorkStep.Neck(plan.id(), plan.week(), "O-1", 1);
        done(neck, StepKind.FIT, instant(MONDAY.plusDays(7), 9));
        jdbc.sql("update work_step set started_at = :begun where kind = 'FIT' and neck_number = 1")
                .param("begun", instant(MONDAY.plusDays(4), 16).atOffset(ZoneOffset.UTC))
                .update();
        assertThat(work.week(WEEK).days().get(4).steps())
                .anyMatch(s -> s.kind() == StepKind.FIT && s.neck().equals(neck));
        assertThat(steps(work.week(new IsoWeek(2026, 50))))
                .noneMatch(s -> s.kind() == StepKind.FIT && s.neck().equals(neck));
    }

    @Test
    void aStepPinnedToADayLiesThereAndIsFreeAgainWithoutThePin() {
        accepted();
        WeekService friday = workAt(instant(MONDAY.minusDays(3), 12));
        WorkStep glue = step(friday.lay(WEEK), StepKind.GLUE);
        LocalDate thursday = MONDAY.plusDays(3);
        friday.pin(glue.id(), thursday);
        LaidWeek pinned = friday.lay(WEEK);
        assertThat(pinned.days().get(3).steps()).extracting(WorkStep::id).contains(glue.id());
        friday.unpin(glue.id());
        assertThat(friday.lay(WEEK).days().get(0).steps())
                .extracting(WorkStep::id)
                .contains(glue.id());
        assertThatThrownBy(() -> friday.pin(glue.id(), MONDAY.plusDays(5)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("no working day");
        assertThatThrownBy(() -> friday.pin(glue.id(), MONDAY.minusDays(6)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("is over");
        assertThatThrownBy(() -> friday.pin(-1, MONDAY)).isInstanceOf(NotFoundException.class);
        book.addDayOff(new DayOff(thursday, "stocktaking"));
        assertThatThrownBy(() -> friday.pin(glue.id(), thursday)).hasMessageContaining("stocktaking");
    }

    @Test
    void aPinnedDayThatWasClosedLaterIsNamed() {
        accepted();
        WeekService friday = workAt(instant(MONDAY.minusDays(3), 12));
        WorkStep glue = step(friday.lay(WEEK), StepKind.GLUE);
        friday.pin(glue.id(), MONDAY.plusDays(3));
        book.addDayOff(new DayOff(MONDAY.plusDays(3), "stocktaking"));
        assertThat(friday.lay(WEEK).remarks())
                .singleElement()
                .satisfies(
                        r -> assertThat(r.sentence()).contains("pinned to", "the shop is closed", "Take the pin off"));
    }

    @Test
    void aWeekWithoutClampsLeavesEveryNeckOutWithASentence() {
        accepted();
        change(w -> with(w, 1, 0, "20", w.glue()));
        LaidWeek week = work.lay(WEEK);
        assertThat(steps(week)).isEmpty();
        assertThat(week.remarks())
                .hasSize(2)
                .allSatisfy(r -> assertThat(r.sentence())
                        .isEqualTo("The shop has no set of clamps. Enter how many it has before anything is glued."));
    }

    @Test
    void aCureLongerThanTheWeekRunsOnIntoTheNext() {
        accepted();
        book.addGlue(new Glue(
                "slow", "Very slow", Duration.ofHours(24), Duration.ofHours(200), new BigDecimal("10"), 10, false));
        work.chooseGlue("D-1", Optional.of("slow"));
        LaidWeek week = workAt(instant(MONDAY.minusDays(3), 12)).lay(WEEK);
        assertThat(week.beyond()).hasSize(2);
        assertThat(week.remarks())
                .filteredOn(r -> r.kind() == Remark.Kind.LATE)
                .hasSize(2)
                .allSatisfy(r -> assertThat(r.sentence()).contains("due on Fri 4 Dec", "cures for 200 hours"));
        assertThat(steps(work.week(new IsoWeek(2026, 50))))
                .extracting(WorkStep::kind)
                .contains(StepKind.SQUARE_UP);
    }

    @Test
    void aDesignWithoutAGlueFallsToTheShopsOwnAndIsRefusedWhereThereIsNone() {
        accepted();
        assertThat(floor.of(List.of(plans.latest(WEEK).orElseThrow().id()))
                        .glue(step(work.lay(WEEK), StepKind.GLUE).neck()))
                .map(Glue::code)
                .contains("aliphatic");
        change(w -> with(w, 1, 3, "20", Optional.empty()));
        LaidWeek week = work.lay(WEEK);
        assertThat(week.remarks())
                .hasSize(2)
                .allSatisfy(r -> assertThat(r.sentence()).contains("Design D-1 names no glue", "the shop has none"));
        work.chooseGlue("D-1", Optional.of("hide"));
        assertThat(work.lay(WEEK).remarks()).isEmpty();
        change(w -> with(w, 1, 3, "16", Optional.empty()));
        assertThat(work.lay(WEEK).remarks())
                .allSatisfy(r -> assertThat(r.sentence())
                        .isEqualTo(
                                "Hide glue, hot sets at 20.0 °C or above, and the shop is kept at 16.0 °C. Warm the shop or"
                                        + " choose another glue."));
        assertThatThrownBy(() -> work.chooseGlue("D-1", Optional.of("nonsense")))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> work.chooseGlue("D-9", Optional.of("hide"))).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void aPieceScrappedMidWeekLeavesItsNeckOutAndStopsTheBench() {
        Plan plan = accepted();
        LaidWeek week = work.lay(WEEK);
        String piece = plan.pairings().get(0).head().piece();
        jdbc.sql("update piece set state = 'SCRAPPED' where code = :code")
                .param("code", piece)
                .update();
        WorkStep cut = steps(week).stream()
                .filter(s -> s.kind() == StepKind.FLATTEN
                        && s.needs().piece().filter(piece::equals).isPresent())
                .findFirst()
                .orElseThrow();
        assertThatThrownBy(() -> bench.start(cut.id(), ""))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Piece " + piece + " was scrapped. Match this neck again with another piece.");
        LaidWeek again = work.lay(WEEK);
        assertThat(again.remarks())
                .filteredOn(r -> r.kind() == Remark.Kind.LEFT_OUT)
                .isNotEmpty()
                .allSatisfy(r -> assertThat(r.sentence()).contains("was scrapped"));
    }

    @Test
    void nothingIsStartedOnceThePlanIsUndone() {
        Plan plan = accepted();
        WorkStep first = steps(work.lay(WEEK)).get(0);
        plans.undo(plan.id());
        assertThatThrownBy(() -> bench.start(first.id(), ""))
                .hasMessageContaining("is not accepted any more, so its pieces are not reserved");
        assertThatThrownBy(() -> work.lay(WEEK)).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void somethingElseStopsTheNeckUntilAPersonLetsItGoOn() {
        accepted();
        WorkStep first = steps(work.lay(WEEK)).get(0);
        assertThatThrownBy(() -> bench.somethingElse(first.id(), "  ", ""))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("is empty");
        bench.somethingElse(first.id(), "the blade is dull", "Ada");
        assertThatThrownBy(() -> bench.start(first.id(), "Ada")).hasMessageContaining("the blade is dull");
        assertThat(work.lay(WEEK).remarks())
                .filteredOn(r -> r.kind() == Remark.Kind.LEFT_OUT)
                .singleElement()
                .satisfies(r -> assertThat(r.sentence()).contains("the blade is dull"));
        bench.goOn(first.id());
        assertThat(work.lay(WEEK).remarks()).isEmpty();
        assertThatThrownBy(() -> bench.done(first.id(), OptionalInt.of(1441), ""))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void aJointGluedBeforeTheClocksChangeCuresForAsManyHoursAsItMust() {
        accepted();
        WorkStep glue = step(work.lay(WEEK), StepKind.GLUE);
        ZoneId berlin = ZoneId.of("Europe/Berlin");
        Instant evening =
                LocalDate.of(2026, 10, 24).atTime(16, 0).atZone(berlin).toInstant();
        BenchService bench = new BenchService(floor, rows, Clock.fixed(evening, berlin));
        rows.ofPlan(glue.neck().plan()).stream()
                .filter(s -> s.kind().compareTo(StepKind.GLUE) <= 0)
                .filter(s -> s.neck().equals(glue.neck()) || s.kind() == StepKind.FLATTEN)
                .forEach(s -> bench.done(s.id(), OptionalInt.empty(), ""));
        assertThat(bench.card(glue.id()).step().progress().curedAt())
                .contains(evening.plus(24, ChronoUnit.HOURS))
                .get()
                .satisfies(at -> assertThat(at.atZone(berlin).toLocalTime()).isEqualTo(LocalTime.of(15, 0)));
    }

    @Test
    void aStepIsLaidWithWhatWasRecordedOnceThereIsEnoughUnlessAPersonKeepsTheShopsMinutes() {
        accepted();
        WeekService friday = workAt(instant(MONDAY.minusDays(3), 12));
        List<WorkStep> first = steps(friday.lay(WEEK));
        List<WorkStep> flattened =
                first.stream().filter(s -> s.kind() == StepKind.FLATTEN).toList();
        assertThat(flattened).hasSizeGreaterThanOrEqualTo(3);
        bench.done(flattened.get(0).id(), OptionalInt.of(31), "");
        bench.done(flattened.get(1).id(), OptionalInt.of(8), "");
        assertThat(friday.lay(WEEK).days().stream()
                        .flatMap(d -> d.steps().stream())
                        .filter(s -> s.kind() == StepKind.FLATTEN && !s.isDone()))
                .allSatisfy(s -> assertThat(s.minutes()).isEqualTo(20));

        // 8, 12, 31: the middle one.
        bench.done(flattened.get(2).id(), OptionalInt.of(12), "");
        assertThat(floor.workshop().minutesOf(StepKind.FLATTEN)).isEqualTo(12);
        bench.takeBack(flattened.get(2).id());
        assertThat(floor.workshop().minutesOf(StepKind.FLATTEN)).isEqualTo(20);
        bench.done(flattened.get(2).id(), OptionalInt.of(12), "");

        List<WorkStep> cuts = first.stream()
                .filter(s -> s.kind() == StepKind.CUT)
                .filter(s -> bench.card(s.id()).waitsFor().isEmpty())
                .toList();
        assertThat(cuts).hasSizeGreaterThanOrEqualTo(3);
        cuts.subList(0, 3).forEach(s -> bench.done(s.id(), OptionalInt.of(3), ""));
        assertThat(steps(friday.lay(WEEK)))
                .filteredOn(s -> s.kind() == StepKind.CUT && !s.isDone())
                .isNotEmpty()
                .allSatisfy(s -> assertThat(s.minutes()).isEqualTo(3));
        change(w -> new Workshop(
                w.hours(),
                w.hands(),
                w.people(),
                w.clampSets(),
                w.celsius(),
                w.glue(),
                w.setUpMinutes(),
                w.minutes(),
                Set.of(StepKind.CUT)));
        assertThat(steps(friday.lay(WEEK)))
                .filteredOn(s -> s.kind() == StepKind.CUT && !s.isDone())
                .allSatisfy(s -> assertThat(s.minutes()).isEqualTo(10));
    }

    @Test
    void theGreedySearchSaysSo() {
        accepted();
        WeekService without = new WeekService(
                floor,
                givenUp,
                rows,
                book,
                designs,
                () -> new Searches.Chosen(new GreedyScheduler(), "Laid one after another.", false),
                longer,
                transaction,
                at(instant(MONDAY.minusDays(3), 12)));
        LaidWeek week = without.lay(WEEK);
        assertThat(week.laying().orElseThrow().engine()).isEqualTo(GreedyScheduler.ENGINE);
        assertThat(week.laying().orElseThrow().note()).isEqualTo("Laid one after another.");
    }

    /** Shows a schedule that begins two days late, and finds the exact one when it looks on. */
    private WeekService thatLooksOn(Runnable meanwhile) {
        Scheduler later = new CpSatScheduler();
        return new WeekService(
                floor,
                givenUp,
                rows,
                book,
                designs,
                () -> new Searches.Chosen(
                        (problem, limit, cancelled) -> {
                            if (limit.compareTo(WeekService.SHOWN_WITHIN) <= 0) {
                                return twoDaysLate(problem);
                            }
                            meanwhile.run();
                            return later.lay(problem, limit, cancelled);
                        },
                        "",
                        true),
                new LongerSearch(Runnable::run),
                transaction,
                at(instant(MONDAY.minusDays(3), 12)));
    }

    private static Schedule twoDaysLate(ScheduleProblem p) {
        LocalDate begins = p.hours().get(0).day().plusDays(2);
        ScheduleProblem late = new ScheduleProblem(
                p.from(),
                p.hours().stream().filter(h -> !h.day().isBefore(begins)).toList(),
                p.resources(),
                p.works(),
                p.holds(),
                p.goals());
        Schedule laid = new GreedyScheduler().lay(late, WeekService.SHOWN_WITHIN, () -> false);
        return new Schedule(
                laid.placed(),
                laid.setUps(),
                laid.levels().stream()
                        .map(l -> new Schedule.Level(
                                l.measure(), l.value() + (l.measure() == Schedule.Measure.DAYS ? 2 : 0), 0))
                        .toList(),
                laid.engine());
    }

    @Test
    void aBetterScheduleReplacesTheOneShownOnceItIsFound() {
        accepted();
        LaidWeek laid = thatLooksOn(() -> assertThat(steps(work.week(WEEK)))
                        .isNotEmpty()
                        .allSatisfy(s ->
                                assertThat(s.planned().orElseThrow().start()).isAfter(instant(MONDAY.plusDays(2), 0))))
                .lay(WEEK);
        assertThat(laid.looksOn()).isFalse();
        assertThat(laid.laying().orElseThrow().engine()).isEqualTo(CpSatScheduler.ENGINE);
        assertThat(laid.laying().orElseThrow().proved()).isTrue();
        assertThat(steps(laid).get(0).planned().orElseThrow().start()).isBefore(instant(MONDAY.plusDays(1), 0));
    }

    @Test
    void aScheduleFoundAfterAPersonWorkedOnAStepIsNotTaken() {
        accepted();
        WeekService week = thatLooksOn(() -> {
            WorkStep first = steps(work.week(WEEK)).get(0);
            bench.start(first.id(), "Ada");
        });
        LaidWeek laid = week.lay(WEEK);
        assertThat(laid.laying().orElseThrow().engine()).isEqualTo(GreedyScheduler.ENGINE);
        assertThat(laid.laying().orElseThrow().proved()).isFalse();
        assertThat(steps(laid).get(0).progress().state()).isEqualTo(State.STARTED);
    }

    @Test
    void theShopsHoursClampsAndGluesAreKept() {
        Map<DayOfWeek, List<Stretch>> hours = new HashMap<>();
        hours.put(DayOfWeek.SATURDAY, List.of(new Stretch(LocalTime.of(9, 0), LocalTime.MIDNIGHT)));
        change(w -> new Workshop(
                hours,
                2,
                "Ada, Bo",
                5,
                new BigDecimal("18.5"),
                Optional.of("hide"),
                15,
                w.minutes(),
                Set.of(StepKind.CUT)));
        Workshop kept = book.workshop().workshop();
        assertThat(kept.hours()).isEqualTo(hours);
        assertThat(kept.people()).isEqualTo("Ada, Bo");
        assertThat(kept.keepsMinutes()).containsExactly(StepKind.CUT);
        assertThat(kept.celsius()).isEqualByComparingTo("18.5");
        assertThat(book.change(0, kept)).isFalse();
        assertThat(book.addDayOff(new DayOff(MONDAY, "fair"))).isTrue();
        assertThat(book.addDayOff(new DayOff(MONDAY, "again"))).isFalse();
        assertThat(book.daysOff()).containsExactly(new DayOff(MONDAY, "fair"));
        assertThat(book.removeDayOff(MONDAY)).isTrue();
        assertThat(book.removeDayOff(MONDAY)).isFalse();
        assertThatThrownBy(() -> book.removeGlue(0, "hide")).isInstanceOf(ConflictException.class);
        assertThat(book.removeGlue(0, "urea")).isTrue();
        assertThat(book.glue("urea")).isEmpty();
    }
}
