package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Moisture;
import org.scarfwright.wood.Species;

/**
 * Density at 12 % is 1000·G·1.12 (Forest Products Laboratory, Wood Handbook, FPL-GTR-282, equation 4-14) with G referred to
 * the volume at 12 %: hard maple 0.63 and black walnut 0.55 as its Table 5-3b prints them.
 */
class PieceWeightTest {
    private static final Map<String, Species> WOODS =
            Map.of("maple_sugar", wood("maple_sugar", 0.63), "walnut_black", wood("walnut_black", 0.55));

    private static Species wood(String id, @Nullable Double gravity) {
        return new Species(
                id,
                id,
                id,
                gravity,
                "12 % MC volume",
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "printed",
                "printed",
                null);
    }

    @Test
    void pieceNobodyReadWeighsWhatItsWoodDoesAtTwelvePercent() {
        // 0.7 · 0.08 · 0.025 m³ · 705.6 kg/m³ = 0.98784 kg
        Piece board = TestPieces.piece("700", "80", "25", Warp.UNMEASURED);
        assertThat(PieceWeight.of(board, WOODS::get))
                .contains(new PieceWeight(new BigDecimal("988"), new Moisture(1200)));
    }

    @Test
    void laminationWeighsWhatItsStripsDo() {
        // 0.7 · 0.025 m² · (0.06 · 705.6 + 0.02 · 616.0) = 0.74088 + 0.21560 kg
        Piece board = TestPieces.of(
                TestPieces.piece("700", "80", "25", Warp.UNMEASURED),
                new PieceWood.Lamination(List.of(
                        new PieceWood.LaminationStrip("maple_sugar", TestPieces.mm("60"), GrainCut.UNKNOWN),
                        new PieceWood.LaminationStrip("walnut_black", TestPieces.mm("20"), GrainCut.UNKNOWN))));
        assertThat(PieceWeight.of(board, WOODS::get).map(PieceWeight::grams)).contains(new BigDecimal("957"));
        assertThat(PieceWeight.of(board, Map.of("maple_sugar", wood("maple_sugar", 0.63))::get))
                .isEmpty();
    }

    @Test
    void weightOfUnknownDensityIsNotInvented() {
        Piece board = TestPieces.piece("700", "80", "25", Warp.UNMEASURED);
        assertThat(PieceWeight.of(board, id -> wood(id, null))).isEmpty();
        assertThat(PieceWeight.of(board, id -> null)).isEmpty();
    }
}
