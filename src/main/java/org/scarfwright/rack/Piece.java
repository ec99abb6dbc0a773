package org.scarfwright.rack;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;

/**
 * A blank, board, lamination or offcut on the rack.
 *
 * @param code short, unique, can be read aloud and written on the wood
 * @param moisture empty when never measured
 * @param grainSlope grain runs at 1 in this along the piece; empty when not judged
 * @param trimLeft end checks to cut off before anything else
 * @param trimRight see trimLeft
 * @param setAside laid aside as warped: offered for heads only unless a person allows it
 * @param neckAllowed a person allowed a set-aside piece to be a neck
 * @param lot code of the lot it came in
 * @param lotReadyOn the day its lot is ready to use; empty when it already is
 * @param cost what the piece cost; empty when nobody knows
 * @param since the day it came to the rack
 */
public record Piece(
        long id,
        long version,
        String code,
        PieceState state,
        PieceWood wood,
        TypedLength length,
        TypedLength width,
        TypedLength thickness,
        GrainCut grain,
        @Nullable Integer grainSlope,
        @Nullable MoistureReading moisture,
        Warp warp,
        Length trimLeft,
        Length trimRight,
        List<Defect> defects,
        boolean setAside,
        boolean neckAllowed,
        @Nullable String lot,
        @Nullable LocalDate lotReadyOn,
        @Nullable String place,
        @Nullable Money cost,
        String note,
        LocalDate since) {
    public Piece {
        defects = List.copyOf(defects);
    }

    /** Why a code a person wrote cannot be one, to be read on from “Code”; empty when it can. */
    public static Optional<String> codeRefusal(String code) {
        return PieceCodes.refusal(code);
    }

    /** Length × width × thickness as measured. */
    public Volume volume() {
        return Volume.of(length.length(), width.length(), thickness.length());
    }

    /** The same while the wood is in the shop; zero once it is used up, scrapped or sold. */
    public Volume volumeThere() {
        return state.isThere() ? volume() : Volume.ZERO;
    }
}
