package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * Which pieces a person looks for. Everything left empty lets all through.
 *
 * @param words found in code, note, place, lot or wood, in any case; each word must be found
 * @param wood id of a species the piece is made of, alone or as a strip
 * @param length at least this long, as measured
 * @param width at least this wide, as measured
 * @param thickness at least this thick, as measured
 * @param can what some design on file could have from it, by the rules of {@link PieceUses.Standard}; only pieces that are
 *     still there
 */
public record PieceFilter(
        String words,
        @Nullable String wood,
        @Nullable PieceState state,
        @Nullable String place,
        @Nullable Length length,
        @Nullable Length width,
        @Nullable Length thickness,
        @Nullable Can can) {
    public static final PieceFilter ALL = new PieceFilter("", null, null, null, null, null, null);

    /** Whatever a piece can be. */
    public PieceFilter(
            String words,
            @Nullable String wood,
            @Nullable PieceState state,
            @Nullable String place,
            @Nullable Length length,
            @Nullable Length width,
            @Nullable Length thickness) {
        this(words, wood, state, place, length, width, thickness, null);
    }

    /** What a piece can be. */
    public enum Can {
        NECK,
        HEAD
    }

    /** What a list is sorted by; ties by code. */
    public enum Sort {
        CODE,
        LONGEST,
        WIDEST,
        THICKEST,
        NEWEST,
        OLDEST
    }
}
