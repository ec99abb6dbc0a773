package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.scarfwright.ledger.WoodFlow.Fate;
import org.scarfwright.ledger.WoodFlow.Flow;
import org.scarfwright.ledger.WoodFlow.Share;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
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
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/** What became of all wood, worked by hand on a shop of three pieces. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class WoodFlowContract {
    @Autowired
    WoodFlow flow;

    @Autowired
    Ledger ledger;

    @Autowired
    Losses losses;

    @Autowired
    Pieces pieces;

    @Autowired
    Cutting cutting;

    private Piece add(String code, String length) {
        return pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, code)
                        .put(PieceField.WOOD, "sapele")
                        .put(PieceField.LENGTH, length)
                        .put(PieceField.WIDTH, "100")
                        .put(PieceField.THICKNESS, "20"),
                LengthUnit.MM);
    }

    private static Volume cm3(String cm3) {
        return Volume.parseCm3(cm3);
    }

    @Test
    void anEmptyRackHasNoFlow() {
        assertThat(flow.now()).isEqualTo(new Flow(Volume.ZERO, List.of()));
    }

    /**
     * W-1, 600 × 100 × 20 mm = 1200 cm³, is used up: a neck of 500, a head of 100, a rest of 200 × 100 × 20 mm = 400, kerf 150; so
     * 50 are unexplained. W-2, 300 × 100 × 20 = 600, stays. W-3, 100 × 100 × 20 = 200, is sold. The head is written off. Came:
     * 2000. W-4 is added and taken back and is as if it had never come.
     */
    @Test
    void addsUpToWhatCame() {
        Piece first = add("W-1", "600");
        add("W-2", "300");
        Piece third = add("W-3", "100");
        add("W-4", "900");
        ledger.undo(newest(), "", "Not ours.");
        cutting.cut(new Cutting.Cut(
                first,
                Optional.empty(),
                List.of(new Cutting.Rest(
                        new Cutting.Size(
                                TypedLength.parse("200", LengthUnit.MM),
                                TypedLength.parse("100", LengthUnit.MM),
                                TypedLength.parse("20", LengthUnit.MM)),
                        null,
                        null,
                        "Bay",
                        "",
                        null)),
                List.of(
                        part(false, "500"),
                        part(true, "100"),
                        Outcome.waste("W-1", Outcome.Cause.KERF, cm3("150"), null)),
                Doing.of(PieceChanged.Kind.CUT, "Kit", "")));
        losses.remove(List.of(new Rack.PieceStamp("W-3", third.version())), PieceState.SOLD, "Kit", "To a friend.");
        losses.writeOff(new Losses.Neck(7, "O-1", 1), List.of(Losses.LostPart.whole(true)), "Kit", "It split.");

        Flow now = flow.now();
        assertThat(now.came()).isEqualTo(cm3("2000"));
        assertThat(now.of(Fate.NECKS)).isEqualTo(cm3("500"));
        assertThat(now.of(Fate.SPOILT)).isEqualTo(cm3("100"));
        assertThat(now.of(Fate.RESTS)).isEqualTo(cm3("400"));
        assertThat(now.of(Fate.AS_IT_CAME)).isEqualTo(cm3("600"));
        assertThat(now.of(Fate.SOLD)).isEqualTo(cm3("200"));
        assertThat(now.of(Fate.KERF)).isEqualTo(cm3("150"));
        assertThat(now.of(Fate.UNEXPLAINED)).isEqualTo(cm3("50"));
        assertThat(now.shares()).hasSize(7);
        assertThat(now.shares().stream().mapToInt(Share::hundredths).sum()).isEqualTo(10_000);
        assertThat(now.shares().stream().filter(s -> s.fate() == Fate.NECKS).map(Share::hundredths))
                .containsExactly(2_500);

        // The same from the ledger alone: what came in by entries that took no wood, less what such entries took back.
        BigInteger brought = BigInteger.ZERO;
        for (long id = 1; id <= newest(); id++) {
            Entry entry = ledger.entry(id).orElseThrow();
            if (entry.outcomes().isEmpty()) {
                for (Act act : entry.acts()) {
                    brought = brought.add(act.volumeAfter().um3())
                            .subtract(act.volumeBefore().um3());
                }
            }
        }
        assertThat(new Volume(brought)).isEqualTo(now.came());
    }

    private static Outcome part(boolean head, String cm3) {
        return Outcome.part(
                "W-1",
                new Outcome.NeckPart(7, "O-1", 1, "D-1", head),
                new Outcome.Size(Length.ofMm(100), Length.ofMm(50), Length.ofMm(20)),
                cm3(cm3),
                null);
    }

    private long newest() {
        return ledger.newest("", 1).acts().get(0).entry();
    }
}
