package org.scarfwright.rack;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The raw text about one piece, as a form, a row of a file or a request gave it. */
public final class PieceCells {
    private final Map<PieceField, String> cells = new EnumMap<>(PieceField.class);

    /** @param text what was given for a field's column; null or blank when nothing was */
    public static PieceCells of(Function<String, @Nullable String> text) {
        PieceCells cells = new PieceCells();
        for (PieceField field : PieceField.values()) {
            String given = text.apply(field.column());
            if (given != null) {
                cells.put(field, given);
            }
        }
        return cells;
    }

    public PieceCells put(PieceField field, String text) {
        cells.put(field, text.strip());
        return this;
    }

    /** Without blanks at its ends; empty when nothing was given. */
    public String get(PieceField field) {
        return cells.getOrDefault(field, "");
    }

    public boolean has(PieceField field) {
        return !get(field).isEmpty();
    }

    /** By column name, for a page. */
    public String get(String column) {
        for (PieceField field : PieceField.values()) {
            if (field.column().equals(column)) {
                return get(field);
            }
        }
        throw new IllegalArgumentException("no field of a piece: " + column);
    }
}
