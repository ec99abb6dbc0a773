package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.test.web.servlet.assertj.MockMvcTester;

/**
 * The database fails at each statement of each deed in turn, and stays away until the deed has failed. What is stored is then what
 * was stored before, to the last row; once nothing fails the deed is done. Commits, and cleans up.
 */
@Import(FailingStatements.class)
@SuppressWarnings("NullAway.Init")
abstract class InterruptedDeedsContract {
    private static final List<String> TABLES = List.of(
            "entry",
            "act",
            "outcome",
            "ledger_head",
            "balance_line",
            "piece",
            "piece_strip",
            "piece_defect",
            "warp_reading",
            "moisture_reading",
            "reservation",
            "lot",
            "place",
            "plan",
            "plan_neck",
            "given_up_neck",
            "work_step");

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    @Autowired
    RackImport rackImport;

    @Autowired
    CutRecording recording;

    @Autowired
    Losses losses;

    @Autowired
    Ledger ledger;

    @Autowired
    Plans plans;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Verification verification;

    @Autowired
    JdbcTemplate jdbc;

    @Autowired
    Flyway flyway;

    private interface Deed {
        void run();
    }

    @BeforeEach
    @AfterEach
    void empty() {
        EmptyDatabase.of(flyway);
    }

    private Piece find(String code) {
        return rack.find(code).orElseThrow();
    }

    private long newest() {
        return ledger.newest("", 1).acts().get(0).entry();
    }

    /** A plan that makes one neck from one piece, P-1. */
    private long plan() {
        rackImport.save("""
                code,wood,length,width,thickness,cost
                P-1,maple_sugar,1800,90,25,30.01
                """);
        create("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        create("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        return plans.make(new IsoWeek(2026, 49)).id();
    }

    private void create(String path, String json) {
        assertThat(mvc.post().uri(path).contentType(MediaType.APPLICATION_JSON).content(json))
                .hasStatus(HttpStatus.CREATED);
    }

    private void planDeeds(Map<String, Deed> deeds) {
        PlannedNeck neck = new PlannedNeck(plan(), "O-1", 1);
        deeds.put("accept", () -> plans.accept(neck.plan()));
        deeds.put("give up", () -> plans.giveUp(neck, "Kit", "A shake came to light."));
        deeds.put("make after all", () -> plans.makeAfterAll(neck));
        deeds.put("undo the plan", () -> plans.undo(neck.plan()));
        deeds.put("accept again", () -> plans.accept(neck.plan()));
        deeds.put("cut as planned", () -> recording.record("P-1", find("P-1").version(), List.of(), Map.of()));
        TypedLength thin = TypedLength.of(Length.ofMm(15));
        deeds.put(
                "write off",
                () -> losses.writeOff(
                        new Losses.Neck(neck.plan(), "O-1", 1),
                        List.of(
                                Losses.LostPart.whole(true),
                                new Losses.LostPart(
                                        false,
                                        List.of(new Cutting.Rest(
                                                new Cutting.Size(TypedLength.of(Length.ofMm(120)), thin, thin),
                                                null,
                                                null,
                                                null,
                                                "",
                                                null)))),
                        "Kit",
                        "The joint opened."));
    }

    @Test
    void aDeedThatFailsAtAnyStatementLeavesEverythingAsItWas() {
        Map<String, Deed> deeds = new LinkedHashMap<>();
        planDeeds(deeds);
        deeds.put(
                "add",
                () -> pieces.add(
                        new PieceCells()
                                .put(PieceField.CODE, "ID-1")
                                .put(PieceField.LAMINATION, "maple_sugar 30 | walnut_black 10 | maple_sugar 30")
                                .put(PieceField.LENGTH, "640")
                                .put(PieceField.WIDTH, "70")
                                .put(PieceField.THICKNESS, "22")
                                .put(PieceField.BOW, "3")
                                .put(PieceField.MOISTURE, "8")
                                .put(PieceField.DEFECTS, "knot 100-120")
                                .put(PieceField.LOT, "L-1")
                                .put(PieceField.LOT_READY_ON, "2026-12-01")
                                .put(PieceField.PLACE, "Bay 1")
                                .put(PieceField.COST, "9.99"),
                        LengthUnit.MM));
        deeds.put("import", () -> rackImport.save("""
                code,wood,length,width,thickness,lot,place
                ID-2,sapele,700,60,20,L-2,Bay 2
                ID-3,wenge,25 3/8 in,3 in,1 in,L-2,
                """));
        deeds.put(
                "change",
                () -> pieces.change(
                        find("ID-3"),
                        PieceWords.cells(find("ID-3"))
                                .put(PieceField.LENGTH, "600")
                                .put(PieceField.PLACE, "Bay 7")
                                .put(PieceField.LOT_READY_ON, "2026-12-05"),
                        LengthUnit.MM));
        deeds.put(
                "measure",
                () -> pieces.measure(
                        find("ID-2"),
                        new PieceCells().put(PieceField.BOW, "2").put(PieceField.MOISTURE, "7.5"),
                        LengthUnit.MM));
        deeds.put(
                "reserve",
                () -> rack.reserve(
                        3,
                        List.of(
                                new Rack.PieceStamp("ID-2", find("ID-2").version()),
                                new Rack.PieceStamp("ID-3", find("ID-3").version()))));
        deeds.put("release", () -> rack.release(3));
        deeds.put(
                "cut",
                () -> recording.record(
                        "ID-1",
                        find("ID-1").version(),
                        List.of(),
                        Map.of(
                                "rest-1-length", "200",
                                "rest-1-code", "ID-4",
                                "rest-2-length", "100",
                                "left-length", "330",
                                "waste-kerf", "9")));
        deeds.put("undo", () -> ledger.undo(newest(), "Kit", "Not this."));
        deeds.put("undo the undoing", () -> ledger.undo(newest(), "Kit", "This after all."));
        deeds.put(
                "scrap",
                () -> losses.remove(
                        List.of(new Rack.PieceStamp("ID-4", find("ID-4").version())),
                        PieceState.SCRAPPED,
                        "Kit",
                        "Worms."));
        int failures = 0;
        for (Map.Entry<String, Deed> deed : deeds.entrySet()) {
            String before = stored();
            boolean failed = true;
            for (int passes = 0; failed; passes++) {
                assertThat(passes).as(deed.getKey() + " comes to an end").isLessThan(400);
                FailingStatements.failAfter(passes);
                boolean threw = false;
                try {
                    deed.getValue().run();
                } catch (RuntimeException e) {
                    threw = true;
                } finally {
                    failed = FailingStatements.stop();
                }
                String now = stored();
                if (failed) {
                    failures++;
                    assertThat(threw)
                            .as("%s, statement %d: it is told", deed.getKey(), passes)
                            .isTrue();
                    assertThat(now)
                            .as("%s, statement %d", deed.getKey(), passes)
                            .isEqualTo(before);
                } else {
                    assertThat(threw).as(deed.getKey() + ": done").isFalse();
                    assertThat(now).as(deed.getKey() + ": done").isNotEqualTo(before);
                }
            }
            assertThat(verification.run().faults()).as(deed.getKey()).isEmpty();
        }
        assertThat(failures).isGreaterThan(250);
        assertThat(Set.copyOf(
                        ledger.newest("", 50).acts().stream().map(Act::entry).toList()))
                .as("one entry for each deed, and one for the plan's piece")
                .hasSize(deeds.size() + 1);
    }

    /** Every row of every table, as text. */
    private String stored() {
        return TABLES.stream()
                .map(t -> t
                        + jdbc.queryForList("select * from " + t).stream()
                                .map(Object::toString)
                                .sorted()
                                .collect(Collectors.joining("\n", "\n", "\n")))
                .collect(Collectors.joining());
    }
}
