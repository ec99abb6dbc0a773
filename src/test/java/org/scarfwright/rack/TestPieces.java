package org.scarfwright.rack;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;

/** Pieces that exist only in tests. */
final class TestPieces {
    static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private TestPieces() {}

    static Length mm(String millimetres) {
        return Length.ofMm(new BigDecimal(millimetres));
    }

    static Warp warp(String bow, String crook, String cup, String twist) {
        return new Warp(mm(bow), mm(crook), mm(cup), mm(twist), DAY);
    }

    static Piece piece(String length, String width, String thickness, Warp warp, Defect... defects) {
        return new Piece(
                1,
                0,
                "T-1",
                PieceState.ON_RACK,
                new PieceWood.Solid("maple_sugar"),
                TypedLength.of(mm(length)),
                TypedLength.of(mm(width)),
                TypedLength.of(mm(thickness)),
                GrainCut.UNKNOWN,
                null,
                null,
                warp,
                Length.ZERO,
                Length.ZERO,
                List.of(defects),
                false,
                false,
                null,
                null,
                null,
                null,
                "",
                DAY);
    }

    static Piece trimmed(Piece p, String left, String right) {
        return new Piece(
                p.id(),
                p.version(),
                p.code(),
                p.state(),
                p.wood(),
                p.length(),
                p.width(),
                p.thickness(),
                p.grain(),
                p.grainSlope(),
                p.moisture(),
                p.warp(),
                mm(left),
                mm(right),
                p.defects(),
                p.setAside(),
                p.neckAllowed(),
                p.lot(),
                p.lotReadyOn(),
                p.place(),
                p.cost(),
                p.note(),
                p.since());
    }

    static Defect defect(String from, String to, boolean structural) {
        return new Defect(Defect.Kind.KNOT, mm(from), mm(to), Length.ZERO, mm("20"), structural);
    }

    static Piece of(Piece p, PieceWood wood) {
        return new Piece(
                p.id(),
                p.version(),
                p.code(),
                p.state(),
                wood,
                p.length(),
                p.width(),
                p.thickness(),
                p.grain(),
                p.grainSlope(),
                p.moisture(),
                p.warp(),
                p.trimLeft(),
                p.trimRight(),
                p.defects(),
                p.setAside(),
                p.neckAllowed(),
                p.lot(),
                p.lotReadyOn(),
                p.place(),
                p.cost(),
                p.note(),
                p.since());
    }
}
