package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.scarfwright.web.ConflictException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** That the ledger is held against itself and the rack, and that what was done can be taken back. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class VerificationContract {
    @Autowired
    Ledger ledger;

    @Autowired
    Verification verification;

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    @Autowired
    Cutting cutting;

    @Autowired
    RackImport rackImport;

    @Autowired
    JdbcClient jdbc;

    @BeforeEach
    void startsSound() {
        assertThat(verification.run().faults()).isEmpty();
    }

    private Piece add(String code) {
        return pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, code)
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, "640")
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22")
                        .put(PieceField.BOW, "4")
                        .put(PieceField.WARP_ON, "2026-03-02")
                        .put(PieceField.LOT, "L-1")
                        .put(PieceField.PLACE, "Bay 3")
                        .put(PieceField.DEFECTS, "knot 500-520")
                        .put(PieceField.COST, "10.00"),
                LengthUnit.MM);
    }

    private static Cutting.Size size(String length, String width, String thickness) {
        return new Cutting.Size(
                TypedLength.parse(length, LengthUnit.MM),
                TypedLength.parse(width, LengthUnit.MM),
                TypedLength.parse(thickness, LengthUnit.MM));
    }

    private Cutting.Made crosscut(Piece piece) {
        return cutting.cut(new Cutting.Cut(
                piece,
                Optional.of(new Cutting.Left(size("400", "70", "22"), Length.ofMm(240), false)),
                List.of(new Cutting.Rest(size("237", "70", "22"), null, Length.ZERO, "Bay 4", "", null)),
                List.of(Outcome.waste(
                        piece.code(),
                        Outcome.Cause.KERF,
                        Volume.of(Length.ofMm(3), Length.ofMm(70), Length.ofMm(22)),
                        null)),
                Doing.of(PieceChanged.Kind.CUT, "Kit", "For a test.")));
    }

    @Test
    void aCutClosesAndIsSound() {
        Cutting.Made made = crosscut(add("VF-1"));
        assertThat(made.outcomes()).extracting(Outcome::kind).doesNotContain(Outcome.Kind.UNEXPLAINED);
        assertThat(made.piece().state()).isEqualTo(PieceState.ON_RACK);
        // 10.00 over 237 mm and 400 mm of one section: 10 · 237 / 637 = 3.7206, 10 · 400 / 637 = 6.2794
        assertThat(made.rests().get(0).cost()).isEqualTo(new Money(372));
        assertThat(made.piece().cost()).isEqualTo(new Money(628));
        // 4 · (237/640)² = 0.5485 and 4 · (400/640)² = 1.5625, rounded up to a micrometre
        assertThat(made.rests().get(0).warp().bow().um()).isEqualTo(549);
        assertThat(made.piece().warp().bow().um()).isEqualTo(1563);
        // The knot lay from 500 to 520; what is left begins at 240.
        assertThat(made.rests().get(0).defects()).isEmpty();
        assertThat(made.piece().defects().get(0).fromLength().um()).isEqualTo(260_000);
        assertThat(verification.run().faults()).isEmpty();
        assertThat(ledger.balance().closes()).isTrue();
    }

    @Test
    void whatDoesNotAddUpIsUnexplainedAndStillCloses() {
        Piece piece = add("VF-2");
        Cutting.Made made = cutting.cut(
                new Cutting.Cut(piece, Optional.empty(), List.of(), List.of(), Doing.of(PieceChanged.Kind.CUT)));
        assertThat(made.outcomes()).hasSize(1);
        assertThat(made.outcomes().get(0).kind()).isEqualTo(Outcome.Kind.UNEXPLAINED);
        assertThat(made.outcomes().get(0).volume()).isEqualTo(piece.volume());
        assertThat(made.piece().state()).isEqualTo(PieceState.USED_UP);
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void takingACutBackPutsThePieceBackAndTakesItsRestsAway() {
        Piece before = add("VF-3");
        Cutting.Made made = crosscut(before);
        long entry = ledger.newest("VF-3", 1).acts().get(0).entry();
        Entry undone = ledger.undo(entry, "Kit", "Wrong piece.");
        assertThat(undone.undoes()).isEqualTo(entry);
        assertThat(undone.why()).isEqualTo("Wrong piece.");
        Piece after = rack.find("VF-3").orElseThrow();
        assertThat(PieceWords.cells(after)).usingRecursiveComparison().isEqualTo(PieceWords.cells(before));
        assertThat(after.version()).isGreaterThan(made.piece().version());
        assertThat(pieces.warpReadings("VF-3")).hasSize(1);
        assertThat(rack.find(made.rests().get(0).code())).isEmpty();
        assertThat(verification.run().faults()).isEmpty();
        assertThat(ledger.balance().closes()).isTrue();
        assertThatThrownBy(() -> ledger.undo(entry, "", ""))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Entry " + entry + " was taken back already, by entry " + undone.id() + ".");
        // Taking it back once more does the cut again.
        ledger.undo(undone.id(), "Kit", "");
        assertThat(rack.find(made.rests().get(0).code())).isPresent();
        assertThat(rack.find("VF-3").orElseThrow().length().length())
                .isEqualTo(made.piece().length().length());
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void takingBackIsRefusedWhereLaterEntriesBuildOnIt() {
        Piece piece = add("VF-4");
        long first = ledger.newest("VF-4", 1).acts().get(0).entry();
        pieces.change(piece, PieceWords.cells(piece).put(PieceField.PLACE, "Bay 9"), LengthUnit.MM);
        assertThatThrownBy(() -> ledger.undo(first, "", ""))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Entry " + (first + 1)
                        + " (moved, by the shop) came after it on piece VF-4. Take that back first.");
        ledger.undo(first + 1, "", "");
        assertThat(rack.find("VF-4").orElseThrow().place()).isEqualTo("Bay 3");
        ledger.undo(first, "", "");
        assertThat(rack.find("VF-4")).isEmpty();
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void onlyTheLastFiftyOfAPersonCanBeTakenBack() {
        add("VF-5");
        long first = ledger.newest("VF-5", 1).acts().get(0).entry();
        for (int i = 0; i < 49; i++) {
            add("VF5-" + i);
        }
        assertThat(ledger.refusal(first)).isEmpty();
        add("VF5-49");
        assertThat(ledger.refusal(first))
                .contains("Entry " + first
                        + " is older than the last 50 entries of the shop; only those can be taken back.");
    }

    @Test
    void aLotsDayThatChangesIsWrittenDownForEveryPieceOfIt() {
        add("VF-6");
        Piece other = add("VF-7");
        pieces.change(other, PieceWords.cells(other).put(PieceField.LOT_READY_ON, "2026-12-24"), LengthUnit.MM);
        assertThat(ledger.newest("VF-6", 1).acts().get(0).detail())
                .isEqualTo("The day its lot is ready changed with another piece of the lot.");
        assertThat(verification.run().faults()).isEmpty();
        ledger.undo(ledger.newest("VF-6", 1).acts().get(0).entry(), "", "");
        assertThat(rack.find("VF-6").orElseThrow().lotReadyOn()).isNull();
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void aReservedPieceIsOutOfReachOfTakingBackWhatMadeIt() {
        Piece piece = add("VF-8");
        long entry = ledger.newest("VF-8", 1).acts().get(0).entry();
        rack.reserve(77, List.of(new Rack.PieceStamp("VF-8", piece.version())));
        assertThat(ledger.refusal(entry).orElseThrow()).contains("(reserved, by the shop) came after it");
        assertThat(ledger.refusal(entry + 1))
                .contains("Entry " + (entry + 1) + " belongs to a plan: accept or undo the plan itself.");
    }

    @Test
    void scrappedAndSoldPiecesLeaveTheBooksClosed() {
        Piece one = add("VF-9");
        Piece two = add("VF-10");
        cutting.remove(
                List.of(new Rack.PieceStamp("VF-9", one.version())),
                PieceState.SCRAPPED,
                Doing.of(PieceChanged.Kind.SCRAPPED, "", "Split."));
        cutting.remove(
                List.of(new Rack.PieceStamp("VF-10", two.version())),
                PieceState.SOLD,
                Doing.of(PieceChanged.Kind.SOLD));
        assertThat(rack.find("VF-9").orElseThrow().state()).isEqualTo(PieceState.SCRAPPED);
        assertThat(rack.find("VF-10").orElseThrow().state()).isEqualTo(PieceState.SOLD);
        assertThat(verification.run().faults()).isEmpty();
        assertThat(ledger.balance().closes()).isTrue();
        ledger.undo(ledger.newest("VF-9", 1).acts().get(0).entry(), "", "");
        assertThat(rack.find("VF-9").orElseThrow().state()).isEqualTo(PieceState.ON_RACK);
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void saysExactlyWhatWasChangedOutsideTheProgram() {
        add("VF-11");
        long entry = ledger.newest("VF-11", 1).acts().get(0).entry();
        jdbc.sql("update piece set length_um = length_um + 1 where code = 'VF-11'")
                .update();
        assertThat(verification.run().faults())
                .containsExactly(
                        "Piece VF-11 is not what entry " + entry
                                + " left it as: length_um is 640001 instead of 640000.",
                        "The pieces that are there differ from what the acts account for by 1.54 mm³.");
    }
}
