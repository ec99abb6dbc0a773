package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.PieceState;
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
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** Making, accepting and undoing plans, whichever engine keeps them. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class PlansContract {
    private static final IsoWeek WEEK = Shelf.WEEK;

    @Autowired
    Plans plans;

    @Autowired
    Rack rack;

    @Autowired
    RackImport rackImport;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    PlanService.Rooms rooms;

    @Autowired
    JdbcPlans rows;

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

    private void stock() {
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
        order("O-1", 1);
    }

    private void order(String code, int quantity) {
        post("/api/orders", """
                {"code": "%s", "design": "D-1", "quantity": %d, "due": "2026-12-04", "week": "2026-W49"}""".formatted(code, quantity));
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

    @Test
    void makesAPlanAndGivesItBackAsItWasMade() {
        stock();
        Plan made = plans.make(WEEK);
        assertThat(made.id()).isPositive();
        assertThat(made.state()).isEqualTo(Plan.State.PROPOSED);
        assertThat(made.status()).isEqualTo(Plan.Status.PROVED);
        assertThat(made.filled()).isEqualTo(1);
        assertThat(made.books().difference()).isEqualTo(Volume.ZERO);
        assertThat(plans.find(made.id())).contains(made);
        assertThat(plans.latest(WEEK)).contains(made);
        assertThat(plans.ofWeek(WEEK)).containsExactly(made);
        assertThat(plans.ofWeek(new IsoWeek(2026, 50))).isEmpty();
        assertThat(reserved()).isEmpty();
    }

    @Test
    void theLatestPlanIsTheOneMadeLast() {
        stock();
        Plan first = plans.make(WEEK);
        Plan second = plans.make(WEEK);
        assertThat(plans.latest(WEEK)).contains(second);
        assertThat(plans.ofWeek(WEEK)).extracting(Plan::id).containsExactly(second.id(), first.id());
    }

    @Test
    void acceptingReservesEveryPieceAndUndoingFreesThem() {
        stock();
        Plan plan = plans.make(WEEK);
        List<String> cut = plan.layouts().stream().map(Plan.PieceLayout::piece).toList();
        assertThat(plans.accept(plan.id()).state()).isEqualTo(Plan.State.ACCEPTED);
        assertThat(reserved()).containsExactlyElementsOf(cut);
        assertThat(plans.find(plan.id()).orElseThrow().state()).isEqualTo(Plan.State.ACCEPTED);
        assertThat(plans.undo(plan.id()).state()).isEqualTo(Plan.State.UNDONE);
        assertThat(reserved()).isEmpty();
        assertThat(rack.findAll(cut)).allSatisfy(p -> assertThat(p.state()).isEqualTo(PieceState.ON_RACK));
    }

    @Test
    void acceptingAndUndoingTwiceChangesNothing() {
        stock();
        Plan plan = plans.make(WEEK);
        Plan accepted = plans.accept(plan.id());
        assertThat(plans.accept(plan.id())).isEqualTo(accepted);
        Plan undone = plans.undo(plan.id());
        assertThat(plans.undo(plan.id())).isEqualTo(undone);
        assertThat(plans.accept(plan.id()).state()).isEqualTo(Plan.State.ACCEPTED);
    }

    @Test
    void undoesOnlyWhatWasAccepted() {
        stock();
        Plan plan = plans.make(WEEK);
        assertThatThrownBy(() -> plans.undo(plan.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Plan " + plan.id() + " was not accepted; there is nothing to undo.");
    }

    @Test
    void refusesAPieceThatWentMeanwhileAndReservesNothing() {
        stock();
        Plan plan = plans.make(WEEK);
        String gone = plan.layouts().get(0).piece();
        jdbc.sql("update piece set state = 'SCRAPPED' where code = :code")
                .param("code", gone)
                .update();
        assertThatThrownBy(() -> plans.accept(plan.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Piece " + gone + " was scrapped. Nothing was reserved; match the week again.");
    }

    @Test
    void refusesAPieceThatWasMeasuredAgainMeanwhile() {
        stock();
        Plan plan = plans.make(WEEK);
        String changed = plan.layouts().get(0).piece();
        jdbc.sql("update piece set version = version + 1 where code = :code")
                .param("code", changed)
                .update();
        assertThatThrownBy(() -> plans.accept(plan.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining(changed)
                .hasMessageContaining("changed");
    }

    @Test
    void refusesADesignOrAnOrderThatWasChangedMeanwhile() {
        stock();
        Plan plan = plans.make(WEEK);
        jdbc.sql("update neck_design set version = version + 1, neck_length_um = 460000")
                .update();
        jdbc.sql("update neck_order set cancelled = true").update();
        assertThatThrownBy(() -> plans.accept(plan.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessage(
                        "Design D-1 was changed since. Order O-1 does not ask for its neck no. 1 of design D-1 in this"
                                + " week any more. Nothing was reserved; match the week again.");
        assertThat(reserved()).isEmpty();
    }

    @Test
    void aPlanThatFailsItsCheckIsNeverSaved() {
        stock();
        PlanService doubting = new PlanService(
                rooms,
                rows,
                hands,
                (plan, facts) -> List.of("The head of O-1 no. 1 hangs in the air."),
                search,
                transaction,
                clock,
                new SearchSlot(),
                Duration.ofSeconds(20));
        assertThatThrownBy(() -> doubting.make(WEEK))
                .isInstanceOf(ConflictException.class)
                .hasMessage(
                        "The plan that was found did not pass its check, and nothing was saved: The head of O-1 no. 1"
                                + " hangs in the air.");
        assertThat(plans.ofWeek(WEEK)).isEmpty();
    }

    @Test
    void onlyOneSearchRunsAtATime() {
        stock();
        SearchSlot slot = new SearchSlot();
        PlanService service = new PlanService(
                rooms,
                rows,
                hands,
                (plan, facts) -> List.of(),
                search,
                transaction,
                clock,
                slot,
                Duration.ofMillis(50));
        slot.take();
        assertThatThrownBy(() -> service.make(WEEK))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Another match is still running; try again when it has ended.");
        slot.leave();
        assertThat(service.make(WEEK).filled()).isEqualTo(1);
    }

    @Test
    void matchesOnlyTheNecksNoAcceptedPlanHas() {
        stock();
        Plan first = plans.make(WEEK);
        plans.accept(first.id());
        assertThatThrownBy(() -> plans.make(WEEK))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("2026-W49 has every neck in an accepted plan already");
        order("O-2", 1);
        Plan second = plans.make(WEEK);
        assertThat(second.ordered()).isEqualTo(1);
        assertThat(second.pairings()).extracting(Plan.Pairing::order).doesNotContain("O-1");
    }

    @Test
    void refusesASecondPlanForTheSameNecks() {
        stock();
        Plan first = plans.make(WEEK);
        Plan second = plans.make(WEEK);
        plans.accept(first.id());
        assertThatThrownBy(() -> plans.accept(second.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessage("O-1 no. 1 (plan " + first.id()
                        + ") is in an accepted plan already. Undo that plan first, or match the week again.");
        plans.undo(first.id());
        assertThat(plans.accept(second.id()).state()).isEqualTo(Plan.State.ACCEPTED);
    }

    @Test
    void numbersGoOnWhereAnAcceptedPlanEnded() {
        stock();
        Plan first = plans.make(WEEK);
        plans.accept(first.id());
        jdbc.sql("update neck_order set quantity = 2 where code = 'O-1'").update();
        Plan second = plans.make(WEEK);
        assertThat(second.ordered()).isEqualTo(1);
        assertThat(second.pairings()).extracting(Plan.Pairing::number).allMatch(n -> n == 2);
    }

    /** Two necks and their pieces: O-1 no. 1 and O-2 no. 1, each with wood of its own or sharing some. */
    private Plan twoNecks() {
        stock();
        order("O-2", 1);
        Plan plan = plans.accept(plans.make(WEEK).id());
        assertThat(plan.filled()).isEqualTo(2);
        // The head's piece may be reserved for the other neck too.
        rackImport.save("""
                code,wood,length,width,thickness,unit
                H9,maple_sugar,420,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        return plan;
    }

    @Test
    void aNeckThatIsGivenUpFreesWhatOnlyItNeedsAndIsMatchedAgain() {
        Plan plan = twoNecks();
        PlannedNeck neck = new PlannedNeck(plan.id(), "O-1", 1);
        Set<String> needed = plan.pairings().stream()
                .filter(p -> !p.of(plan.id()).equals(neck))
                .flatMap(p -> p.pieces().stream())
                .collect(Collectors.toSet());
        List<String> alone = plans.neck(neck).pairing().pieces().stream()
                .filter(p -> !needed.contains(p))
                .toList();
        assertThat(plans.neck(neck).wood())
                .allSatisfy(w -> assertThat(w.fate())
                        .isEqualTo(needed.contains(w.piece()) ? Plans.Fate.NEEDED : Plans.Fate.FREED));

        Plans.GivingUp done = plans.giveUp(neck, "Ada", "The head split.");

        assertThat(done.freed()).containsExactlyInAnyOrderElementsOf(alone);
        assertThat(reserved()).containsExactlyInAnyOrderElementsOf(needed);
        assertThat(plans.givenUp(plan.id())).containsExactly(done.neck());
        assertThat(done.neck().why()).isEqualTo("The head split.");
        assertThat(plans.giveUp(neck, "", "again").neck()).isEqualTo(done.neck());
        Plan again = plans.make(WEEK);
        assertThat(again.ordered()).isEqualTo(1);
        assertThat(again.pairings())
                .extracting(Plan.Pairing::order, Plan.Pairing::number)
                .containsExactly(tuple("O-1", 1));
    }

    @Test
    void aNeckThatWasGivenUpIsMadeAfterAllUnlessAnotherPlanMakesIt() {
        Plan plan = twoNecks();
        PlannedNeck neck = new PlannedNeck(plan.id(), "O-1", 1);
        List<String> before = reserved();
        plans.giveUp(neck, "", "The head split.");
        plans.makeAfterAll(neck);
        assertThat(plans.givenUp(plan.id())).isEmpty();
        assertThat(reserved()).isEqualTo(before);
        plans.makeAfterAll(neck);

        plans.giveUp(neck, "", "The head split.");
        Plan other = plans.accept(plans.make(WEEK).id());
        assertThat(other.filled()).isEqualTo(1);
        assertThatThrownBy(() -> plans.makeAfterAll(neck))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("O-1 no. 1 (plan " + other.id() + ")");
    }

    @Test
    void aNeckWhoseFreedWoodChangedIsNotMadeAfterAll() {
        Plan plan = twoNecks();
        PlannedNeck neck = new PlannedNeck(plan.id(), "O-1", 1);
        String freed = plans.giveUp(neck, "", "The head split.").freed().get(0);
        jdbc.sql("update piece set version = version + 1 where code = :code")
                .param("code", freed)
                .update();
        assertThatThrownBy(() -> plans.makeAfterAll(neck))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("Piece " + freed + " was changed since")
                .hasMessageContaining("match its week for it");
    }

    @Test
    void givesUpOnlyNecksOfAnAcceptedPlanAndForAReason() {
        stock();
        Plan plan = plans.make(WEEK);
        PlannedNeck neck = new PlannedNeck(plan.id(), "O-1", 1);
        assertThatThrownBy(() -> plans.giveUp(neck, "", "split"))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Plan " + plan.id() + " is not accepted, so it makes no neck.");
        plans.accept(plan.id());
        assertThatThrownBy(() -> plans.giveUp(neck, "", " "))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("write in a few words what happened");
        assertThatThrownBy(() -> plans.giveUp(new PlannedNeck(plan.id(), "O-1", 2), "", "split"))
                .isInstanceOf(NotFoundException.class)
                .hasMessage("Plan " + plan.id() + " makes no neck “O-1” no. 2.");
        assertThatThrownBy(() -> plans.giveUp(new PlannedNeck(987_654, "O-1", 1), "", "split"))
                .isInstanceOf(NotFoundException.class);
        plans.giveUp(neck, "", "split");
        plans.undo(plan.id());
        plans.accept(plan.id());
        assertThat(plans.givenUp(plan.id())).isEmpty();
    }

    @Test
    void anEmptyWeekIsToldSo() {
        assertThatThrownBy(() -> plans.make(new IsoWeek(2031, 7)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("Week 2031-W07 has no orders; enter one for it, or choose a week that has some.");
    }

    @Test
    void anEmptyRackIsAnInfeasiblePlanAndNothingToAccept() {
        stock();
        jdbc.sql("update piece set state = 'USED_UP'").update();
        Plan plan = plans.make(WEEK);
        assertThat(plan.status()).isEqualTo(Plan.Status.INFEASIBLE);
        assertThat(plan.unfilled()).hasSize(1);
        assertThatThrownBy(() -> plans.accept(plan.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Plan " + plan.id() + " makes no neck; there is nothing to accept.");
    }

    @Test
    void anUnknownPlanIsToldSo() {
        assertThat(plans.find(987_654)).isEmpty();
        assertThatThrownBy(() -> plans.accept(987_654))
                .isInstanceOf(NotFoundException.class)
                .hasMessage("There is no plan 987654.");
        assertThatThrownBy(() -> plans.undo(987_654)).isInstanceOf(NotFoundException.class);
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void twoPeopleAtOnceGetOnePlanBetweenThem() throws Exception {
        EmptyDatabase.of(flyway);
        try {
            stock();
            Plan first = plans.make(WEEK);
            Plan second = plans.make(WEEK);
            int won = 0;
            int refused = 0;
            ExecutorService people = Executors.newFixedThreadPool(2);
            try {
                Callable<Plan> one = () -> plans.accept(first.id());
                Callable<Plan> other = () -> plans.accept(second.id());
                for (Future<Plan> answer : people.invokeAll(List.of(one, other))) {
                    try {
                        answer.get();
                        won++;
                    } catch (ExecutionException e) {
                        assertThat(e.getCause()).isInstanceOf(ConflictException.class);
                        refused++;
                    }
                }
            } finally {
                people.shutdown();
            }
            assertThat(won).isEqualTo(1);
            assertThat(refused).isEqualTo(1);
            assertThat(plans.ofWeek(WEEK))
                    .filteredOn(p -> p.state() == Plan.State.ACCEPTED)
                    .hasSize(1);
        } finally {
            EmptyDatabase.of(flyway);
        }
    }
}
