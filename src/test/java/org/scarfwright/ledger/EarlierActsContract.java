package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A shop that worked before there were entries keeps its history, and its ledger is sound from then on. Commits, and cleans up. */
@SuppressWarnings("NullAway.Init")
abstract class EarlierActsContract {
    @Autowired
    Flyway flyway;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    EarlierActs earlier;

    @Autowired
    Ledger ledger;

    @Autowired
    Verification verification;

    @Autowired
    Rack rack;

    @Autowired
    Pieces pieces;

    @AfterEach
    void empty() {
        EmptyDatabase.of(flyway);
    }

    /** What the program wrote when migration 105 was its last. */
    private void earlierShop() {
        Flyway before = Flyway.configure()
                .configuration(flyway.getConfiguration())
                .cleanDisabled(false)
                .target("105")
                .load();
        before.clean();
        before.migrate();
        transaction.executeWithoutResult(status -> {
            for (int i = 1; i <= 1_203; i++) {
                jdbc.sql("insert into piece (code, code_order, state, species_id, length_um, length_typed, width_um,"
                                + " width_typed, thickness_um, thickness_typed, grain, trim_left_um, trim_right_um, bow_um,"
                                + " crook_um, cup_um, twist_um, set_aside, neck_allowed, note, since) values (:code, :order,"
                                + " :state, 'wenge', 640000, '640 mm', 70000, '70 mm', 22000, '22 mm', 'FLAT', 0, 0, 0, 0, 0,"
                                + " 0, false, false, '', date '2026-01-02')")
                        .param("code", "E-" + i)
                        .param("order", ("E-" + i).replace("0", "01").replace("-", "00"))
                        .param("state", i == 2 ? "RESERVED" : "ON_RACK")
                        .update();
                act("BOUGHT", "E-" + i, "0", "985600000000000");
            }
            jdbc.sql("insert into reservation (piece_id, plan_id, reserved_at)"
                            + " select id, 5, timestamp '2026-02-03 10:00:00' from piece where code = 'E-2'")
                    .update();
            act("RESERVED", "E-2", "985600000000000", "985600000000000");
        });
    }

    private void act(String kind, String piece, String before, String after) {
        jdbc.sql(
                        "insert into act (kind, piece_code, volume_before_um3, volume_after_um3, plan_id, acted_at, who, detail)"
                                + " values (:kind, :piece, " + before + ", " + after + ", null,"
                                + " timestamp with time zone '2026-01-02 09:00:00+00:00', 'Ada', 'As it was.')")
                .param("kind", kind)
                .param("piece", piece)
                .update();
    }

    @Test
    void historyIsCarriedOverAndSoundFromThenOn() {
        earlierShop();
        flyway.migrate();
        assertThat(verification.run().isSound()).isFalse();
        earlier.carryOver();
        earlier.carryOver(); // a program that starts again finds nothing left to do

        assertThat(verification.run().faults()).isEmpty();
        assertThat(verification.run().entries()).isEqualTo(1_204 + 3);
        assertThat(ledger.balance().closes()).isTrue();
        List<Act> acts = ledger.newest("E-2", 10).acts();
        assertThat(acts)
                .extracting(Act::kind)
                .containsExactly(PieceChanged.Kind.CARRIED, PieceChanged.Kind.RESERVED, PieceChanged.Kind.BOUGHT);
        assertThat(acts.get(2).who()).isEqualTo("Ada");
        assertThat(acts.get(2).at()).isEqualTo(Instant.parse("2026-01-02T09:00:00Z"));
        assertThat(rack.find("E-2").orElseThrow().state()).isEqualTo(PieceState.RESERVED);

        Piece piece = rack.find("E-1").orElseThrow();
        pieces.change(piece, PieceWords.cells(piece).put(PieceField.PLACE, "Bay 3"), LengthUnit.MM);
        ledger.undo(ledger.newest("E-1", 1).acts().get(0).entry(), "", "");
        assertThat(rack.find("E-1").orElseThrow().place()).isNull();
        assertThat(verification.run().faults()).isEmpty();
        assertThat(ledger.refusal(ledger.newest("E-1", 10).acts().get(2).entry()))
                .hasValueSatisfying(s -> assertThat(s).contains("only wrote down what was there already"));
    }
}
