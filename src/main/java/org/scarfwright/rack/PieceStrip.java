package org.scarfwright.rack;

import java.util.List;
import org.scarfwright.measure.Length;
import org.scarfwright.web.Strip;
import org.scarfwright.web.WoodLook;

/** A piece as the pages draw it. */
public final class PieceStrip {
    private PieceStrip() {}

    /** The bare piece, with its warp and flaws and nothing laid on it. */
    public static Strip of(Piece piece) {
        return new Strip(
                piece.code(),
                piece.length().length(),
                piece.width().length(),
                piece.thickness().length(),
                bands(piece),
                piece.warp().bow(),
                piece.warp().crook(),
                piece.trimLeft(),
                piece.trimRight(),
                piece.defects().stream().map(PieceStrip::flaw).toList(),
                List.of());
    }

    private static List<Strip.Band> bands(Piece piece) {
        if (piece.wood() instanceof PieceWood.Lamination lamination) {
            return lamination.strips().stream()
                    .map(s -> band(s.speciesId(), s.width(), s.grain()))
                    .toList();
        }
        return List.of(band(piece.wood().key(), piece.width().length(), piece.grain()));
    }

    private static Strip.Band band(String speciesId, Length width, GrainCut grain) {
        return new Strip.Band(WoodLook.of(speciesId), width, rings(grain));
    }

    private static Strip.Rings rings(GrainCut grain) {
        return switch (grain) {
            case FLAT -> Strip.Rings.FLAT;
            case RIFT -> Strip.Rings.RIFT;
            case QUARTER -> Strip.Rings.QUARTER;
            case UNKNOWN -> Strip.Rings.UNKNOWN;
        };
    }

    private static Strip.Flaw flaw(Defect defect) {
        return new Strip.Flaw(
                defect.fromLength(), defect.toLength(), defect.fromWidth(), defect.toWidth(), defect.structural());
    }
}
