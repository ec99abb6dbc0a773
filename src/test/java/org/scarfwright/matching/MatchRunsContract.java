package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.SearchWatch;
import org.scarfwright.necks.IsoWeek;
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

/** Searches that go on by themselves, whichever engine keeps their rows. They commit, so each test begins with a new shop. */
@SuppressWarnings("NullAway.Init")
abstract class MatchRunsContract {
    private static final IsoWeek WEEK = Shelf.WEEK;
    private static final IsoWeek NEXT = new IsoWeek(2026, 50);
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @Autowired
    MatchRuns runs;

    @Autowired
    Plans plans;

    @Autowired
    RackImport rackImport;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    PlanService.Rooms rooms;

    @Autowired
    JdbcPlans planRows;

    @Autowired
    JdbcRuns rows;

    @Autowired
    PlanCheck check;

    @Autowired
    JdbcHands hands;

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
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,620,90,25,mm
                N2,maple_sugar,640,90,25,mm
                H1,maple_sugar,420,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        order("O-1", WEEK);
        order("O-2", NEXT);
    }

    @AfterEach
    void leaveNothing() {
        EmptyDatabase.of(flyway);
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

    /** A search that waits until it is let go or stopped, and says when it began. */
    private final class Held implements MatchSearch {
        final CountDownLatch began = new CountDownLatch(1);
        final CountDownLatch go = new CountDownLatch(1);
        private final boolean findsNothing;

        Held(boolean findsNothing) {
            this.findsNothing = findsNothing;
        }

        @Override
        public org.scarfwright.matching.search.SearchResult solve(
                org.scarfwright.matching.search.SearchProblem problem, Duration limit, SearchWatch watch) {
            began.countDown();
            try {
                while (!watch.stopped() && !go.await(5, TimeUnit.MILLISECONDS)) {
                    // Neither let go nor stopped.
                }
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            return search.solve(problem, findsNothing ? Duration.ZERO : limit, () -> false);
        }
    }

    private RunService service(MatchSearch searching, PlanCheck checking) {
        SearchSlot slot = new SearchSlot();
        PlanService service = new PlanService(
                rooms, planRows, hands, checking, searching, transaction, clock, slot, Duration.ofSeconds(20));
        return new RunService(service, rows, slot, transaction, clock);
    }

    @Test
    void aSearchEndsInAPlanThatWasKept() {
        MatchRun asked = runs.start(WEEK);
        MatchRun done = runs.await(asked.id(), PATIENCE);
        assertThat(done.state()).isEqualTo(MatchRun.State.DONE);
        assertThat(done.week()).isEqualTo("2026-W49");
        assertThat(done.startedAt()).isNotNull();
        assertThat(done.endedAt()).isNotNull();
        assertThat(plans.latest(WEEK)).map(Plan::id).contains(done.plan());
        assertThat(plans.latest(WEEK).orElseThrow().filled()).isEqualTo(1);
        assertThat(runs.find(asked.id())).contains(done);
        assertThat(runs.open(WEEK)).isEmpty();
    }

    @Test
    void oneSearchRunsAndOthersWaitInLine() throws Exception {
        Held held = new Held(false);
        RunService service = service(held, check);
        MatchRun first = service.start(WEEK);
        held.began.await();
        MatchRun second = service.start(NEXT);
        assertThat(service.find(first.id()).orElseThrow().state()).isEqualTo(MatchRun.State.RUNNING);
        assertThat(second.state()).isEqualTo(MatchRun.State.WAITING);
        assertThat(second.ahead()).isEqualTo(1);
        assertThat(service.open(NEXT)).extracting(MatchRun::id).containsExactly(second.id());
        held.go.countDown();
        assertThat(service.await(first.id(), PATIENCE).state()).isEqualTo(MatchRun.State.DONE);
        assertThat(service.await(second.id(), PATIENCE).state()).isEqualTo(MatchRun.State.DONE);
    }

    @Test
    void theSameQuestionIsNotSearchedTwiceAtOnce() throws Exception {
        Held held = new Held(false);
        RunService service = service(held, check);
        MatchRun first = service.start(WEEK);
        held.began.await();
        assertThat(service.start(WEEK).id()).isEqualTo(first.id());
        change("update piece set version = version + 1 where code = 'N1'");
        assertThat(service.start(WEEK).id()).as("the rack changed").isNotEqualTo(first.id());
        service.endWithTheProgram();
    }

    @Test
    void tooManySearchesAreRefused() throws Exception {
        Held held = new Held(false);
        RunService service = service(held, check);
        for (int i = 0; i < RunService.MOST_OPEN; i++) {
            service.start(WEEK);
            change("update piece set version = version + 1 where code = 'N1'");
        }
        assertThatThrownBy(() -> service.start(WEEK))
                .isInstanceOf(ConflictException.class)
                .hasMessage("20 searches wait or run already; wait for one to end, or stop some.");
        service.endWithTheProgram();
    }

    @Test
    void stoppingKeepsTheBest() throws Exception {
        Held held = new Held(false);
        RunService service = service(held, check);
        MatchRun run = service.start(WEEK);
        held.began.await();
        service.stop(run.id());
        MatchRun stopped = service.await(run.id(), PATIENCE);
        assertThat(stopped.state()).isEqualTo(MatchRun.State.DONE);
        assertThat(stopped.message()).isEqualTo("Stopped by hand; the best so far was kept.");
        assertThat(service.stop(run.id())).as("stopping again changes nothing").isEqualTo(stopped);
    }

    @Test
    void stoppingWithNothingToKeepMakesNoPlan() throws Exception {
        Held held = new Held(true);
        RunService service = service(held, check);
        MatchRun run = service.start(WEEK);
        held.began.await();
        MatchRun waiting = service.start(NEXT);
        service.stop(waiting.id());
        service.stop(run.id());
        assertThat(service.await(run.id(), PATIENCE).state()).isEqualTo(MatchRun.State.STOPPED);
        assertThat(service.await(waiting.id(), PATIENCE).state()).isEqualTo(MatchRun.State.STOPPED);
        assertThat(service.find(run.id()).orElseThrow().message())
                .isEqualTo("Stopped before any neck had its wood; there was nothing to keep.");
        assertThat(plans.ofWeek(WEEK)).isEmpty();
    }

    @Test
    void aSearchThatFailsReservesNothingAndSaysSo() {
        MatchSearch failing = (problem, limit, watch) -> {
            throw new IllegalStateException("no solver");
        };
        RunService service = service(failing, check);
        MatchRun run = service.await(service.start(WEEK).id(), PATIENCE);
        assertThat(run.state()).isEqualTo(MatchRun.State.FAILED);
        assertThat(run.message()).isEqualTo("The search failed; the program's log says where. Nothing was reserved.");
        assertThat(jdbc.sql("select count(*) from reservation")
                        .query(Long.class)
                        .single())
                .isZero();
        // The line goes on after a failure.
        assertThat(service.await(service.start(NEXT).id(), PATIENCE).state()).isEqualTo(MatchRun.State.FAILED);
    }

    @Test
    void aSearchWithoutMemorySaysSo() {
        MatchSearch hungry = (problem, limit, watch) -> {
            throw new OutOfMemoryError("made up");
        };
        RunService service = service(hungry, check);
        MatchRun run = service.await(service.start(WEEK).id(), PATIENCE);
        assertThat(run.message()).isEqualTo("The search ran out of memory. Nothing was reserved.");
    }

    @Test
    void aPlanThatFailsItsCheckIsNotKept() {
        RunService service = service(search, (plan, facts) -> List.of("The head hangs in the air."));
        MatchRun run = service.await(service.start(WEEK).id(), PATIENCE);
        assertThat(run.state()).isEqualTo(MatchRun.State.FAILED);
        assertThat(run.message()).contains("did not pass its check").contains("The head hangs in the air.");
        assertThat(plans.ofWeek(WEEK)).isEmpty();
    }

    @Test
    void whatRanWhenTheProgramEndedIsLostAndReservesNothing() throws Exception {
        Held held = new Held(false);
        RunService service = service(held, check);
        MatchRun killed = service.start(WEEK);
        held.began.await();
        // What the next program does first, while this row still says that it runs.
        service(search, check).loseWhatTheLastProgramLeft();
        MatchRun lost = rows.find(killed.id()).orElseThrow();
        assertThat(lost.state()).isEqualTo(MatchRun.State.LOST);
        assertThat(lost.message())
                .isEqualTo("The program ended before this search did. Nothing was reserved; match the week again.");
        assertThat(plans.ofWeek(WEEK)).isEmpty();
        service.endWithTheProgram();
    }

    @Test
    void endingTheProgramStopsTheSearchAndKeepsNothingHalfDone() throws Exception {
        Held held = new Held(false);
        RunService service = service(held, check);
        MatchRun running = service.start(WEEK);
        held.began.await();
        MatchRun waiting = service.start(NEXT);
        service.endWithTheProgram();
        assertThat(rows.find(running.id()).orElseThrow().state()).isEqualTo(MatchRun.State.LOST);
        assertThat(rows.find(waiting.id()).orElseThrow().state()).isEqualTo(MatchRun.State.LOST);
        assertThat(plans.ofWeek(WEEK)).isEmpty();
    }

    @Test
    void refusesAWeekWithoutOrdersAtOnce() {
        assertThatThrownBy(() -> runs.start(new IsoWeek(2031, 7))).isInstanceOf(InvalidInputException.class);
        assertThat(jdbc.sql("select count(*) from match_run").query(Long.class).single())
                .isZero();
    }

    @Test
    void anUnknownSearchIsToldSo() {
        assertThat(runs.find(987_654)).isEmpty();
        assertThatThrownBy(() -> runs.stop(987_654))
                .isInstanceOf(NotFoundException.class)
                .hasMessage("There is no search 987654.");
    }
}
