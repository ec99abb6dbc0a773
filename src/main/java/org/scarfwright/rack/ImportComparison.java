package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import org.scarfwright.measure.TypedLength;

/**
 * Whether a row of a file says the same about a piece as the rack does. Cells that are empty say nothing. Place and note
 * are not figures: they may have changed since.
 *
 * @param warps every reading the piece ever had
 * @param moistures every reading the piece ever had
 */
record ImportComparison(Piece piece, List<Warp> warps, List<MoistureReading> moistures) {

    /** What differs, the rack's figure first; empty when nothing does. */
    List<String> differences(PieceCells cells, PieceFacts facts) {
        List<String> found = new ArrayList<>();
        size(found, "length", piece.length(), facts.length());
        size(found, "width", piece.width(), facts.width());
        size(found, "thickness", piece.thickness(), facts.thickness());
        compare(found, "wood", written(piece.wood()), written(facts.wood()));
        if (cells.has(PieceField.GRAIN)) {
            compare(found, "grain", PieceWords.grain(piece.grain()), PieceWords.grain(facts.grain()));
        }
        if (cells.has(PieceField.GRAIN_SLOPE)) {
            compare(found, "grain slope", "1 in " + piece.grainSlope(), "1 in " + facts.grainSlope());
        }
        if (cells.has(PieceField.TRIM_LEFT)) {
            compare(
                    found,
                    "left trim",
                    piece.trimLeft().toString(),
                    facts.trimLeft().toString());
        }
        if (cells.has(PieceField.TRIM_RIGHT)) {
            compare(
                    found,
                    "right trim",
                    piece.trimRight().toString(),
                    facts.trimRight().toString());
        }
        if (cells.has(PieceField.DEFECTS) && !new HashSet<>(piece.defects()).equals(new HashSet<>(facts.defects()))) {
            compare(
                    found,
                    "defects",
                    PieceWords.defects(piece.defects(), piece.width().length()),
                    PieceWords.defects(facts.defects(), facts.width().length()));
        }
        if (cells.has(PieceField.LOT) && facts.lot() != null) {
            String lot = piece.lot() == null ? "" : piece.lot();
            if (!PieceTable.key(lot).equals(PieceTable.key(facts.lot()))) {
                compare(found, "lot", lot, facts.lot());
            }
        }
        if (cells.has(PieceField.COST)) {
            compare(found, "cost", String.valueOf(piece.cost()), String.valueOf(facts.cost()));
        }
        if (cells.has(PieceField.SET_ASIDE)) {
            compare(found, "set aside", yes(piece.setAside()), yes(facts.setAside()));
        }
        if (cells.has(PieceField.NECK_ALLOWED)) {
            compare(found, "neck allowed", yes(piece.neckAllowed()), yes(facts.neckAllowed()));
        }
        readings(found, cells, facts);
        return found;
    }

    private void readings(List<String> found, PieceCells cells, PieceFacts facts) {
        Warp warp = facts.warp();
        if (warp != null) {
            boolean dated = cells.has(PieceField.WARP_ON) || cells.has(PieceField.MEASURED_ON);
            boolean known = warps.stream()
                    .anyMatch(w -> w.bow().equals(warp.bow())
                            && w.crook().equals(warp.crook())
                            && w.cup().equals(warp.cup())
                            && w.twist().equals(warp.twist())
                            && (warp.middle().isNone() || w.middle().equals(warp.middle()))
                            && (!dated || Objects.equals(w.readOn(), warp.readOn())));
            if (!known) {
                compare(found, "warp", warp(piece.warp()), warp(warp));
            }
        }
        MoistureReading moisture = facts.moisture();
        if (moisture != null) {
            boolean dated = cells.has(PieceField.MOISTURE_ON) || cells.has(PieceField.MEASURED_ON);
            boolean known = moistures.stream()
                    .anyMatch(m -> m.content().equals(moisture.content())
                            && (!dated || m.readOn().equals(moisture.readOn())));
            if (!known) {
                MoistureReading now = piece.moisture();
                compare(
                        found,
                        "moisture",
                        now == null ? "not measured" : now.content() + " on " + now.readOn(),
                        moisture.content() + (dated ? " on " + moisture.readOn() : ""));
            }
        }
    }

    private static String warp(Warp warp) {
        return warp.isMeasured() ? PieceWords.warp(warp) + " on " + warp.readOn() : "not measured";
    }

    private static String written(PieceWood wood) {
        return PieceWords.wood(wood) + PieceWords.lamination(wood);
    }

    private static String yes(boolean yes) {
        return yes ? "yes" : "no";
    }

    private static void size(List<String> found, String name, TypedLength there, TypedLength here) {
        if (!there.length().equals(here.length())) {
            found.add(name + " " + PieceWords.written(there) + " on the rack, " + PieceWords.written(here)
                    + " in the file");
        }
    }

    private static void compare(List<String> found, String name, String there, String here) {
        if (!there.equals(here)) {
            found.add(name + " " + shown(there) + " on the rack, " + shown(here) + " in the file");
        }
    }

    private static String shown(String value) {
        return value.isEmpty() || value.equals("null") ? "nothing" : value;
    }
}
