package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Near-equal plans, two plans side by side and the locking of orders, whichever engine keeps the rows. Searches commit, so each
 * test begins with a new shop.
 */
@SuppressWarnings("NullAway.Init")
abstract class ChoicesContract {
    private static final IsoWeek WEEK = Shelf.WEEK;
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final ExtraCost PLENTY = ExtraCost.parse("100 %");

    @Autowired
    MatchRuns runs;

    @Autowired
    Plans plans;

    @Autowired
    Hands hands;

    @Autowired
    Rack rack;

    @Autowired
    RackImport rackImport;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    PlanService.Rooms rooms;

    @Autowired
    JdbcPlans planRows;

    @Autowired
    JdbcHands handRows;

    @Autowired
    JdbcRuns rows;

    @Autowired
    PlanCheck check;

    @Autowired
    MatchSearch search;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Flyway flyway;

    @BeforeEach
    void stock() {
        EmptyDatabase.of(flyway);
        wood("N1,maple_sugar,620", "N2,maple_sugar,630", "N3,maple_sugar,640", "N4,maple_sugar,650");
        wood("H1,maple_sugar,290", "H2,maple_sugar,300", "H3,maple_sugar,310", "H4,maple_sugar,320");
        post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        order("O-1", WEEK);
        order("O-2", WEEK);
        order("X-1", new IsoWeek(2026, 50));
    }

    @AfterEach
    void leaveNothing() {
        EmptyDatabase.of(flyway);
    }

    private void wood(String... pieces) {
        StringBuilder csv = new StringBuilder("code,wood,length,width,thickness,unit\n");
        for (String piece : pieces) {
            csv.append(piece).append(piece.startsWith("N") ? ",90,25,mm\n" : ",90,22,mm\n");
        }
        rackImport.save(csv.toString().getBytes(StandardCharsets.UTF_8));
    }

    private void order(String code, IsoWeek week) {
        post("/api/orders", """
                {"code": "%s", "design": "D-1", "quantity": 1, "due": "%s", "week": "%s"}""".formatted(code, week.monday(), week));
    }

    /** The program writes inside transactions only. */
    private void change(String sql) {
        transaction.executeWithoutResult(s -> jdbc.sql(sql).update());
    }

    private void post(String path, String json) {
        assertThat(mvc.post().uri(path).contentType(MediaType.APPLICATION_JSON).content(json))
                .hasStatus(HttpStatus.CREATED);
    }

    private List<String> reserved() {
        return jdbc.sql("select code from piece where state = 'RESERVED' order by code")
                .query(String.class)
                .list();
    }

    private static List<String> cut(Plan plan) {
        return plan.layouts().stream().map(Plan.PieceLayout::piece).toList();
    }

    private MatchRun near(Plan plan, ExtraCost extra) {
        return runs.await(runs.nearEqual(plan.id(), extra).id(), PATIENCE);
    }

    /** Every part can only come from one board. */
    private void leaveOneBoard() {
        change("update piece set state = 'SCRAPPED'");
        wood("N9,maple_sugar,2000");
    }

    private static BigDecimal spent(Plan plan) {
        return plan.bookValue().orElseThrow();
    }

    // ---- near-equal plans
    // --------------------------------------------------------------------------------------------

    @Test
    void keepsPlansThatDifferWithinTheCostAndNameTheirOrigin() {
        Plan origin = plans.make(WEEK);
        MatchRun run = near(origin, PLENTY);
        assertThat(run.state()).isEqualTo(MatchRun.State.DONE);
        assertThat(run.kind()).isEqualTo(MatchRun.Kind.NEAR_EQUAL);
        assertThat(run.origin()).isEqualTo(origin.id());
        assertThat(run.plan()).isEqualTo(origin.id());
        assertThat(run.message()).isEqualTo("3 other plans fill as much within that cost.");
        assertThat(runs.lastNear(origin.id())).contains(run);
        List<Plan> near = plans.nearEquals(origin.id());
        assertThat(near).hasSize(3).allSatisfy(plan -> {
            assertThat(plan.state()).isEqualTo(Plan.State.PROPOSED);
            assertThat(plan.asked().origin()).isEqualTo(new Plan.Origin(Plan.OriginKind.NEAR_EQUAL, origin.id()));
            assertThat(plan.filled()).isEqualTo(2);
            assertThat(spent(plan)).isBetween(spent(origin), spent(origin).multiply(BigDecimal.valueOf(2)));
            assertThat(plan.books().difference()).isEqualTo(Volume.ZERO);
            assertThat(plan.hands()).isEmpty();
            assertThat(plans.find(plan.id())).contains(plan);
        });
        assertThat(PlanComparison.of(origin, near.get(0)).differing())
                .as("there is wood for both orders from other pieces")
                .isEqualTo(2);
        for (int i = 0; i < near.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(PlanComparison.of(near.get(i), near.get(j)).differing())
                        .isPositive();
            }
        }
        assertThat(plans.relatives(origin.id()))
                .extracting(Plans.Relative::id, Plans.Relative::kind)
                .containsExactlyElementsOf(near.stream()
                        .map(p -> tuple(p.id(), Plan.OriginKind.NEAR_EQUAL))
                        .toList());
        assertThat(reserved()).isEmpty();
        assertThat(plans.accept(near.get(0).id()).state()).isEqualTo(Plan.State.ACCEPTED);
        assertThat(reserved()).containsExactlyElementsOf(cut(near.get(0)));
    }

    @Test
    void askingAgainKeepsNoPlanTwice() {
        Plan origin = plans.make(WEEK);
        near(origin, PLENTY);
        int kept = plans.nearEquals(origin.id()).size();
        near(origin, PLENTY);
        assertThat(plans.nearEquals(origin.id())).hasSize(kept);
    }

    @Test
    void saysWhatTheNextOneWouldCostWhereNoneIsWithinTheCost() {
        post("/api/designs", """
                {"code": "D-2", "name": "Plain overlaid", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        post("/api/orders", """
                {"code": "O-5", "design": "D-2", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        Plan origin = plans.make(WEEK, new Plan.Asked(List.of("O-5"), 0, null));
        MatchRun run = near(origin, ExtraCost.parse("0"));
        assertThat(run.state()).isEqualTo(MatchRun.State.DONE);
        assertThat(run.message())
                .matches("No other plan that fills as much was found within that cost\\."
                        + " The cheapest other one that was met spends \\d+\\.\\d\\d EUR\\.");
        assertThat(plans.nearEquals(origin.id())).isEmpty();
    }

    @Test
    void refusesWhatIsNoAnswerToWhatTheShopAsksNow() {
        assertThatThrownBy(() -> runs.nearEqual(987_654, PLENTY))
                .isInstanceOf(NotFoundException.class)
                .hasMessage("There is no plan 987654.");
        Plan origin = plans.make(WEEK);
        hands.add(WEEK, new Hand.Forbid("N4", null));
        assertRefused(origin, "What was decided by hand changed since. Match the week again first.");
        hands.undo(WEEK, hands.of(WEEK).get(0).id());
        order("O-3", WEEK);
        assertRefused(
                origin,
                "The orders of 2026-W49 ask for 3 necks now, and plan " + origin.id()
                        + " was made for 2; match the week again.");
        change("update neck_order set cancelled = true where code = 'O-3'");
        change("update neck_design set version = version + 1");
        assertRefused(origin, "Design D-1 was changed since. Match the week again first.");
        change("update neck_design set version = version - 1");
        plans.accept(origin.id());
        assertRefused(origin, "Plan " + origin.id() + " is accepted already; undo it to look for others.");
    }

    private void assertRefused(Plan plan, String sentence) {
        assertThatThrownBy(() -> runs.nearEqual(plan.id(), PLENTY))
                .isInstanceOf(ConflictException.class)
                .hasMessage(sentence);
    }

    @Test
    void saysWhichPiecesChangedSinceAndByWhom() {
        Plan origin = plans.make(WEEK);
        String piece = origin.layouts().get(0).piece();
        String etag = Objects.requireNonNull(mvc.get()
                .uri("/api/rack/pieces/" + piece)
                .exchange()
                .getResponse()
                .getHeader("ETag"));
        assertThat(mvc.post()
                        .uri("/api/rack/pieces/" + piece + "/readings")
                        .header("If-Match", etag)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"bowMm\": 0.1}"))
                .hasStatus(HttpStatus.CREATED);
        String sentence = "Piece " + piece + " was changed since; match again. " + piece + ": ";
        assertThatThrownBy(() -> runs.nearEqual(origin.id(), PLENTY))
                .isInstanceOf(ConflictException.class)
                .hasMessageStartingWith(sentence)
                .hasMessageEndingWith(" Match the week again first.");
        assertThatThrownBy(() -> runs.lock(origin.id(), List.of("O-1", "O-2")))
                .isInstanceOf(ConflictException.class)
                .hasMessageStartingWith(sentence)
                .hasMessageEndingWith(" Nothing was reserved; match the week again.");
        assertThat(reserved()).isEmpty();
    }

    private RunService service(MatchSearch searching, PlanCheck checking) {
        SearchSlot slot = new SearchSlot();
        PlanService service = new PlanService(
                rooms, planRows, handRows, checking, searching, transaction, clock, slot, Duration.ofSeconds(20));
        return new RunService(service, rows, slot, transaction, clock);
    }

    @Test
    void aNearEqualPlanThatFailsItsCheckIsNotKept() {
        Plan origin = plans.make(WEEK);
        RunService service = service(search, (plan, facts) -> List.of("The head hangs in the air."));
        MatchRun run = service.await(service.nearEqual(origin.id(), PLENTY).id(), PATIENCE);
        assertThat(run.state()).isEqualTo(MatchRun.State.FAILED);
        assertThat(run.message()).contains("did not pass its check").contains("The head hangs in the air.");
        assertThat(plans.nearEquals(origin.id())).isEmpty();
    }

    @Test
    void stoppedBeforeAnotherPlanWasFoundNothingIsKept() throws Exception {
        Plan origin = plans.make(WEEK);
        CountDownLatch began = new CountDownLatch(1);
        MatchSearch waiting = (problem, limit, watch) -> {
            began.countDown();
            while (!watch.stopped()) {
                Thread.onSpinWait();
            }
            return search.solve(problem, Duration.ZERO, () -> false);
        };
        RunService service = service(waiting, check);
        MatchRun run = service.nearEqual(origin.id(), PLENTY);
        began.await();
        assertThat(service.nearEqual(origin.id(), PLENTY).id())
                .as("asked twice, searched once")
                .isEqualTo(run.id());
        assertThat(service.find(run.id()).orElseThrow().found()).isZero();
        service.stop(run.id());
        MatchRun stopped = service.await(run.id(), PATIENCE);
        assertThat(stopped.state()).isEqualTo(MatchRun.State.STOPPED);
        assertThat(stopped.message()).isEqualTo("Stopped before another plan was found; there was nothing to keep.");
        assertThat(plans.nearEquals(origin.id())).isEmpty();
    }

    @Test
    void stoppedLaterWhatWasFoundIsKept() {
        Plan origin = plans.make(WEEK);
        RunService[] service = new RunService[1];
        long[] run = new long[1];
        CountDownLatch known = new CountDownLatch(1);
        int[] searches = new int[1];
        MatchSearch stopping = (problem, limit, watch) -> {
            if (searches[0]++ == 1) {
                await(known);
                service[0].stop(run[0]);
            }
            return search.solve(problem, limit, watch);
        };
        service[0] = service(stopping, check);
        run[0] = service[0].nearEqual(origin.id(), PLENTY).id();
        known.countDown();
        MatchRun stopped = service[0].await(run[0], PATIENCE);
        assertThat(stopped.state()).isEqualTo(MatchRun.State.DONE);
        assertThat(stopped.message()).endsWith("Stopped by hand; the best so far was kept.");
        assertThat(plans.nearEquals(origin.id())).isNotEmpty();
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    // ---- a part of a plan
    // --------------------------------------------------------------------------------------------

    @Test
    void locksSomeOrdersAndMatchesTheOthersWithTheRackThatIsLeft() {
        Plan whole = plans.make(WEEK);
        MatchRuns.Locked done = runs.lock(whole.id(), List.of("O-1"));
        Plan locked = done.locked();
        assertThat(locked.state()).isEqualTo(Plan.State.ACCEPTED);
        assertThat(locked.asked().origin()).isEqualTo(new Plan.Origin(Plan.OriginKind.LOCKED, whole.id()));
        assertThat(locked.pairings()).extracting(Plan.Pairing::order).containsExactly("O-1");
        assertThat(whole.layouts()).containsAll(locked.layouts());
        assertThat(locked.books())
                .isEqualTo(locked.layouts().stream()
                        .map(Plan.PieceLayout::books)
                        .reduce(Plan.Books.NOTHING, Plan.Books::plus));
        assertThat(locked.books().difference()).isEqualTo(Volume.ZERO);
        assertThat(reserved()).containsExactlyElementsOf(cut(locked));

        MatchRun remainder = runs.await(Objects.requireNonNull(done.remainder()).id(), PATIENCE);
        assertThat(remainder.kind()).isEqualTo(MatchRun.Kind.REMAINDER);
        assertThat(remainder.origin()).isEqualTo(whole.id());
        Plan left = plans.find(Objects.requireNonNull(remainder.plan())).orElseThrow();
        assertThat(left.asked().origin()).isEqualTo(new Plan.Origin(Plan.OriginKind.REMAINDER, whole.id()));
        assertThat(left.ordered()).isEqualTo(1);
        assertThat(left.pairings()).extracting(Plan.Pairing::order).containsExactly("O-2");
        assertThat(cut(left)).doesNotContainAnyElementsOf(cut(locked));
        assertThat(plans.relatives(whole.id()))
                .extracting(Plans.Relative::kind, Plans.Relative::state)
                .containsExactly(
                        tuple(Plan.OriginKind.LOCKED, Plan.State.ACCEPTED),
                        tuple(Plan.OriginKind.REMAINDER, Plan.State.PROPOSED));
        assertThat(plans.accept(left.id()).state()).isEqualTo(Plan.State.ACCEPTED);
    }

    @Test
    void undoingTheLockFreesItsPiecesAndTheWholeCanBeAcceptedAgain() {
        Plan whole = plans.make(WEEK);
        Plan locked = runs.lock(whole.id(), List.of("O-2")).locked();
        assertThatThrownBy(() -> plans.accept(whole.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("O-2 no. 1 (plan " + locked.id() + ") is in an accepted plan already.");
        assertThatThrownBy(() -> runs.lock(whole.id(), List.of("O-2")))
                .as("accepted twice")
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("O-2 no. 1 (plan " + locked.id() + ") is in an accepted plan already.");
        assertThatThrownBy(() -> runs.nearEqual(locked.id(), PLENTY)).isInstanceOf(ConflictException.class);
        plans.undo(locked.id());
        assertThat(reserved()).isEmpty();
        assertThat(plans.accept(whole.id()).state()).isEqualTo(Plan.State.ACCEPTED);
    }

    @Test
    void aPieceGoesWithAllOfItsOrdersOrWithNone() {
        leaveOneBoard();
        Plan whole = plans.make(WEEK);
        assertThat(whole.ordersOn("N9")).containsExactly("O-1", "O-2");
        assertThatThrownBy(() -> runs.lock(whole.id(), List.of("O-2")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("Orders cannot be locked so: N9 is cut for O-2 and for O-1; accept all of them or none.");
        assertThat(reserved()).isEmpty();
        assertThat(plans.ofWeek(WEEK)).containsExactly(whole);
        MatchRuns.Locked both = runs.lock(whole.id(), List.of("O-1", "O-2"));
        assertThat(both.locked().id()).as("the plan itself").isEqualTo(whole.id());
        assertThat(both.remainder()).isNull();
        assertThat(reserved()).containsExactlyElementsOf(cut(whole));
    }

    @Test
    void theRemainderKeepsToTheOrdersThePlanWasAskedFor() {
        order("O-3", WEEK);
        Plan two = plans.make(WEEK, new Plan.Asked(List.of("O-1", "O-3"), 7, null));
        MatchRun remainder = runs.await(
                Objects.requireNonNull(runs.lock(two.id(), List.of("O-3")).remainder())
                        .id(),
                PATIENCE);
        Plan left = plans.find(Objects.requireNonNull(remainder.plan())).orElseThrow();
        assertThat(left.asked().orders()).containsExactly("O-1");
        assertThat(left.asked().seed()).isEqualTo(7);
        assertThat(left.pairings()).extracting(Plan.Pairing::order).containsExactly("O-1");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''  | Orders are missing; name at least one that the plan makes a neck of.",
                "O-9 | Order “O-9” has no neck in plan %d; name one that has.",
                "X-1 | Order “X-1” has no neck in plan %d; name one that has.",
                "<b> | Order “<b>” has no neck in plan %d; name one that has."
            })
    void refusesAnOrderThatIsNoneOfThePlan(String order, String sentence) {
        Plan whole = plans.make(WEEK);
        assertThatThrownBy(() -> runs.lock(whole.id(), order.isEmpty() ? List.of() : List.of("O-1", order)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(sentence.formatted(whole.id()));
        assertThat(reserved()).isEmpty();
        assertThat(plans.ofWeek(WEEK)).containsExactly(whole);
    }

    @Test
    void refusesAPlanThatIsAcceptedOrUnknown() {
        Plan whole = plans.make(WEEK);
        plans.accept(whole.id());
        assertThatThrownBy(() -> runs.lock(whole.id(), List.of("O-1")))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Plan " + whole.id() + " is accepted already; undo it to lock some of its orders.");
        assertThatThrownBy(() -> runs.lock(987_654, List.of("O-1"))).isInstanceOf(NotFoundException.class);
    }

    @Test
    void aPieceThatWentMeanwhileLeavesNothingHalfDone() {
        Plan whole = plans.make(WEEK);
        String gone = whole.pairings().get(0).neck().piece();
        change("update piece set state = 'SCRAPPED' where code = '" + gone + "'");
        assertThatThrownBy(() ->
                        runs.lock(whole.id(), List.of(whole.pairings().get(0).order())))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Piece " + gone + " was scrapped. Nothing was reserved; match the week again.");
        assertThat(reserved()).isEmpty();
        assertThat(plans.ofWeek(WEEK)).containsExactly(whole);
        assertThat(runs.open(WEEK)).isEmpty();
        assertThat(jdbc.sql("select count(*) from match_run").query(Long.class).single())
                .isZero();
    }

    @Test
    void aLockThatFailsItsCheckIsNotAccepted() {
        Plan whole = plans.make(WEEK);
        RunService doubting = service(search, (plan, facts) -> List.of("The head hangs in the air."));
        assertThatThrownBy(() -> doubting.lock(whole.id(), List.of("O-1")))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("The head hangs in the air.");
        assertThat(reserved()).isEmpty();
        assertThat(plans.ofWeek(WEEK)).containsExactly(whole);
    }

    // ---- two plans side by side
    // --------------------------------------------------------------------------------------

    @Test
    void comparesTwoPlansOfOneWeekAndNoOthers() {
        Plan one = plans.make(WEEK);
        Plan other = plans.make(WEEK, new Plan.Asked(List.of("O-2"), 0, null));
        Plan next = plans.make(new IsoWeek(2026, 50));
        assertThat(plans.compare(one.id(), other.id()).second()).isEqualTo(other);
        assertThatThrownBy(() -> plans.compare(one.id(), one.id()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("Second plan is the same plan; choose another one.");
        assertThatThrownBy(() -> plans.compare(one.id(), next.id()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("Second plan " + next.id() + " is of 2026-W50 and plan " + one.id()
                        + " of 2026-W49; choose two of one week.");
        assertThatThrownBy(() -> plans.compare(987_654, 987_655))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("First plan 987654 does not exist; choose one that does. Second plan 987655 does not exist;"
                        + " choose one that does.");
    }
}
