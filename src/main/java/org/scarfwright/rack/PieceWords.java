package org.scarfwright.rack;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.TypedLength;

/**
 * A piece in words: for sentences, and for cells that can be read again as they are written. What is written for a cell is
 * exact, to the micrometre.
 */
public final class PieceWords {
    private PieceWords() {}

    /** As people wrote it, such as 640 mm × 70 mm × 7/8 in. */
    public static String size(Piece piece) {
        return size(piece.length(), piece.width(), piece.thickness());
    }

    /** The same for a piece that is not on the rack yet. */
    public static String size(PieceFacts facts) {
        return size(facts.length(), facts.width(), facts.thickness());
    }

    private static String size(TypedLength length, TypedLength width, TypedLength thickness) {
        return written(length) + " × " + written(width) + " × " + written(thickness);
    }

    /** As a person typed it; a fraction that was typed without a unit is in inches and says so. */
    public static String written(TypedLength length) {
        String typed = length.typed();
        boolean bare = Character.isDigit(typed.charAt(typed.length() - 1));
        return bare ? typed + " " + LengthUnit.INCH.symbol() : typed;
    }

    public static String state(PieceState state) {
        return switch (state) {
            case ON_RACK -> "on the rack";
            case RESERVED -> "reserved";
            case AT_BENCH -> "at the bench";
            case USED_UP -> "used up";
            case SCRAPPED -> "scrapped";
            case SOLD -> "sold";
        };
    }

    public static String grain(GrainCut grain) {
        return grain == GrainCut.UNKNOWN ? "" : grain.name().toLowerCase(Locale.ROOT);
    }

    public static String meter(MoistureReading.Meter meter) {
        return meter == MoistureReading.Meter.UNKNOWN ? "" : meter.name().toLowerCase(Locale.ROOT);
    }

    public static String kind(Defect.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** As the cell wood holds it; empty for a lamination. */
    public static String wood(PieceWood wood) {
        return wood instanceof PieceWood.Solid solid ? solid.speciesId() : "";
    }

    /** As the cell lamination holds it; empty for solid wood. */
    public static String lamination(PieceWood wood) {
        return wood instanceof PieceWood.Lamination lamination
                ? lamination.strips().stream()
                        .map(s -> (s.speciesId() + " " + s.width() + " " + grain(s.grain())).strip())
                        .collect(Collectors.joining(" | "))
                : "";
    }

    /** As the cell defects holds it. */
    public static String defects(List<Defect> defects, Length width) {
        return defects.stream()
                .map(d -> kind(d.kind()) + " " + stretch(d.fromLength(), d.toLength())
                        + (d.fromWidth().um() == 0 && d.toWidth().equals(width)
                                ? ""
                                : " x " + stretch(d.fromWidth(), d.toWidth()))
                        + (d.structural() ? " structural" : " looks"))
                .collect(Collectors.joining("; "));
    }

    /** What was read, such as bow 3 mm, crook 0 mm, cup 0 mm, twist 1 mm; over the middle half bow 1.2 mm. */
    public static String warp(Warp warp) {
        List<String> middle = Stream.of(
                        over("bow", warp.middle().bow()),
                        over("crook", warp.middle().crook()),
                        over("twist", warp.middle().twist()))
                .filter(s -> !s.isEmpty())
                .toList();
        return "bow " + warp.bow() + ", crook " + warp.crook() + ", cup " + warp.cup() + ", twist " + warp.twist()
                + (middle.isEmpty() ? "" : "; over the middle half " + String.join(", ", middle));
    }

    private static String over(String name, @Nullable Length read) {
        return read == null ? "" : name + " " + read;
    }

    private static String stretch(Length from, Length to) {
        return from + " to " + to;
    }

    /** The cells that say all there is to say about a piece, for editing it or for another one like it. */
    public static PieceCells cells(Piece piece) {
        PieceCells cells = new PieceCells()
                .put(PieceField.CODE, piece.code())
                .put(PieceField.WOOD, wood(piece.wood()))
                .put(PieceField.LAMINATION, lamination(piece.wood()))
                .put(PieceField.LENGTH, piece.length().typed())
                .put(PieceField.WIDTH, piece.width().typed())
                .put(PieceField.THICKNESS, piece.thickness().typed())
                .put(PieceField.DEFECTS, defects(piece.defects(), piece.width().length()))
                .put(PieceField.TRIM_LEFT, zeroAsNothing(piece.trimLeft()))
                .put(PieceField.TRIM_RIGHT, zeroAsNothing(piece.trimRight()))
                .put(PieceField.GRAIN, grain(piece.grain()))
                .put(PieceField.GRAIN_SLOPE, piece.grainSlope() == null ? "" : "1 in " + piece.grainSlope())
                .put(PieceField.SET_ASIDE, piece.setAside() ? "yes" : "")
                .put(PieceField.NECK_ALLOWED, piece.neckAllowed() ? "yes" : "")
                .put(PieceField.LOT, piece.lot() == null ? "" : piece.lot())
                .put(
                        PieceField.LOT_READY_ON,
                        piece.lotReadyOn() == null ? "" : piece.lotReadyOn().toString())
                .put(PieceField.PLACE, piece.place() == null ? "" : piece.place())
                .put(PieceField.COST, piece.cost() == null ? "" : piece.cost().toString())
                .put(PieceField.NOTE, piece.note());
        if (piece.warp().isMeasured()) {
            cells.put(PieceField.BOW, piece.warp().bow().toString())
                    .put(PieceField.CROOK, piece.warp().crook().toString())
                    .put(PieceField.CUP, piece.warp().cup().toString())
                    .put(PieceField.TWIST, piece.warp().twist().toString());
            MiddleReading middle = piece.warp().middle();
            put(cells, PieceField.MIDDLE_BOW, middle.bow());
            put(cells, PieceField.MIDDLE_CROOK, middle.crook());
            put(cells, PieceField.MIDDLE_TWIST, middle.twist());
        }
        MoistureReading moisture = piece.moisture();
        if (moisture != null) {
            cells.put(PieceField.MOISTURE, moisture.content().toString())
                    .put(PieceField.METER, meter(moisture.meter()));
        }
        return cells;
    }

    private static void put(PieceCells cells, PieceField field, @Nullable Length read) {
        if (read != null) {
            cells.put(field, read.toString());
        }
    }

    private static String zeroAsNothing(Length length) {
        return length.um() == 0 ? "" : length.toString();
    }
}
