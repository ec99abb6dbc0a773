package org.scarfwright.shop.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.scarfwright.ledger.CutRecording;
import org.scarfwright.ledger.Ledger;
import org.scarfwright.ledger.Losses;
import org.scarfwright.matching.ExtraCost;
import org.scarfwright.matching.Hand;
import org.scarfwright.matching.Hands;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.ShopStart;
import org.scarfwright.shop.StepKind;
import org.scarfwright.web.ConflictException;
import org.scarfwright.week.Bench;
import org.scarfwright.week.WeekWork;
import org.scarfwright.week.WorkStep;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.web.context.WebApplicationContext;

/** The demo shop, worked in until every table holds something. */
final class FullShop {
    static final IsoWeek WEEK = new IsoWeek(2026, 49);

    private final WebApplicationContext program;
    private final MockMvcTester mvc;

    private FullShop(WebApplicationContext program) {
        this.program = program;
        this.mvc = MockMvcTester.from(program);
    }

    static void fill(WebApplicationContext program) {
        FullShop shop = new FullShop(program);
        shop.program.getBean(ShopStart.class).loadDemo();
        shop.settings();
        shop.wood();
        shop.plans();
        shop.work();
        shop.away();
    }

    /** One more order, matched, accepted, laid and with a decision by hand. */
    static void orderAndPlan(WebApplicationContext program, IsoWeek week) {
        FullShop shop = new FullShop(program);
        shop.send(
                true,
                "/api/orders",
                "{\"design\": \"WITHY-6\", \"quantity\": 1, \"due\": \"2026-12-11\", \"week\": \"" + week + "\"}",
                "");
        MatchRuns runs = program.getBean(MatchRuns.class);
        MatchRun run = runs.await(runs.start(week).id(), Duration.ofMinutes(2));
        assertThat(run.state()).isEqualTo(MatchRun.State.DONE);
        Plans plans = program.getBean(Plans.class);
        Plan plan = plans.accept(plans.latest(week).orElseThrow().id());
        assertThat(plan.filled()).isEqualTo(1);
        program.getBean(WeekWork.class).lay(week);
        program.getBean(Hands.class).add(week, new Hand.Forbid("NEW-1", null));
    }

    private void settings() {
        send(true, "/api/shop/days-off", "{\"day\": \"2026-12-24\", \"word\": \"Winter\"}", "");
        send(
                true,
                "/api/wood/species",
                "{\"commonName\": \"Pear\", \"specificGravity\": \"0.69\", \"specificGravityBasis\": \"12\"}",
                "");
        send(false, "/api/designs/WITHY-6/glue", "{\"glue\": \"epoxy\"}", "");
    }

    private void send(boolean create, String path, String json, String match) {
        var request = create ? mvc.post() : mvc.put();
        assertThat(request.uri(path)
                        .header("If-Match", match)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(json))
                .hasStatus2xxSuccessful();
    }

    private void wood() {
        Pieces pieces = program.getBean(Pieces.class);
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "NOTED-1")
                        .put(PieceField.WOOD, "own_pear")
                        .put(PieceField.LENGTH, "25 3/8 in")
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22,5")
                        .put(PieceField.COST, "12.50")
                        .put(PieceField.LOT, "L-ö 1")
                        .put(PieceField.LOT_READY_ON, "2026-05-01")
                        .put(PieceField.DEFECTS, "knot 100-120 x 10-20 looks")
                        .put(PieceField.NOTE, "=1+1 “quoted” \\ \"straight\"\nsecond line\twith a tab, ð and 🪵"),
                LengthUnit.MM);
        Piece piece = program.getBean(Rack.class).find("NOTED-1").orElseThrow();
        pieces.measure(
                piece,
                new PieceCells()
                        .put(PieceField.BOW, "1.2")
                        .put(PieceField.MOISTURE, "8.5")
                        .put(PieceField.METER, "pin")
                        .put(PieceField.MEASURED_ON, "2026-09-11"),
                LengthUnit.MM);
    }

    private void plans() {
        MatchRuns runs = program.getBean(MatchRuns.class);
        MatchRun run = runs.await(runs.start(WEEK).id(), Duration.ofMinutes(2));
        assertThat(run.state()).isEqualTo(MatchRun.State.DONE);
        Plans plans = program.getBean(Plans.class);
        Plan plan = plans.latest(WEEK).orElseThrow();
        MatchRun near =
                runs.await(runs.nearEqual(plan.id(), ExtraCost.parse("20 %")).id(), Duration.ofMinutes(2));
        assertThat(near.state()).isEqualTo(MatchRun.State.DONE);
        plans.accept(plan.id());
        program.getBean(Hands.class).add(new IsoWeek(2026, 50), new Hand.Forbid("NOTED-1", null));
    }

    private void work() {
        WeekWork work = program.getBean(WeekWork.class);
        Bench bench = program.getBean(Bench.class);
        List<WorkStep> steps = laid(work);
        bench.somethingElse(steps.get(steps.size() - 1).id(), "It split.", "Kit");
        List<String> cut = new ArrayList<>();
        for (int round = 0; round < 4; round++) {
            for (WorkStep step : steps) {
                if (step.kind().compareTo(StepKind.GLUE) <= 0 && cut.size() < 6) {
                    try {
                        bench.done(step.id(), OptionalInt.of(12), "Ada");
                        if (step.kind() == StepKind.CUT) {
                            step.needs().piece().ifPresent(cut::add);
                        }
                    } catch (ConflictException e) {
                        // it waits for another
                    }
                }
            }
        }
        CutRecording recording = program.getBean(CutRecording.class);
        int recorded = 0;
        for (String code : cut.stream().distinct().toList()) {
            Piece piece = program.getBean(Rack.class).find(code).orElseThrow();
            CutRecording.Proposal proposed = recording.propose(code, List.of());
            recording.record(code, piece.version(), proposed.chosen(), Map.of("who", "Ada", "waste-kerf", "21.5"));
            recorded++;
        }
        assertThat(recorded).as("cuts that were recorded").isGreaterThan(1);
        Ledger ledger = program.getBean(Ledger.class);
        ledger.undo(ledger.newest("", 1).acts().get(0).entry(), "Ada", "Not this.");
        WorkStep.Neck stopped = steps.get(steps.size() - 1).neck();
        WorkStep.Neck spoilt = laid(work).stream()
                .filter(s -> s.kind() == StepKind.CUT && s.progress().state() == WorkStep.State.OPEN)
                .map(WorkStep::neck)
                .filter(n -> !n.equals(stopped))
                .reduce((a, b) -> b)
                .orElseThrow();
        program.getBean(Plans.class)
                .giveUp(new PlannedNeck(spoilt.plan(), spoilt.order(), spoilt.number()), "Kit", "The blank split.");
        // Somebody at work keeps the schedule from being replaced by a better one that is still looked for.
        WorkStep first = laid(work).stream()
                .filter(s ->
                        bench.card(s.id()).waitsFor().isEmpty() && s.progress().state() == WorkStep.State.OPEN)
                .findFirst()
                .orElseThrow();
        bench.start(first.id(), "Ada");
    }

    private static List<WorkStep> laid(WeekWork work) {
        List<WorkStep> steps =
                work.lay(WEEK).days().stream().flatMap(d -> d.steps().stream()).toList();
        assertThat(steps).isNotEmpty();
        return steps;
    }

    private void away() {
        Losses losses = program.getBean(Losses.class);
        Piece piece = program.getBean(Rack.class).find("NOTED-1").orElseThrow();
        losses.remove(
                List.of(new Rack.PieceStamp(piece.code(), piece.version())), PieceState.SOLD, "Kit", "To a friend.");
    }
}
