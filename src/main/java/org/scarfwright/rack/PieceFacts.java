package org.scarfwright.rack;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;

/**
 * All a person says about a piece, checked: every length inside its limits, every wood known, every defect inside the piece.
 * The components mean what they mean in {@link Piece}.
 *
 * @param moisture empty: nothing is said, a reading the piece already has stays
 * @param warp empty: nothing is said, a reading the piece already has stays
 * @param lotReadyOn empty: a new piece leaves its lot as it is, an edit takes the day off the lot
 */
public record PieceFacts(
        PieceWood wood,
        TypedLength length,
        TypedLength width,
        TypedLength thickness,
        GrainCut grain,
        @Nullable Integer grainSlope,
        @Nullable MoistureReading moisture,
        @Nullable Warp warp,
        Length trimLeft,
        Length trimRight,
        List<Defect> defects,
        boolean setAside,
        boolean neckAllowed,
        @Nullable String lot,
        @Nullable LocalDate lotReadyOn,
        @Nullable String place,
        @Nullable Money cost,
        String note) {
    public PieceFacts {
        defects = List.copyOf(defects);
    }
}
