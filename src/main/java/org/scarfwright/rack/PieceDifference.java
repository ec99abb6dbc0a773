package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;

/**
 * What an edit changes, in words for the ledger.
 *
 * @param inShape wood, sizes, trims, warp, flaws, grain: what a plan that holds the piece relies on
 * @param inReadings readings that say nothing new about the shape: moisture
 * @param place empty when it stays where it is
 * @param inWords everything else
 */
record PieceDifference(
        List<String> inShape,
        List<String> inReadings,
        @Nullable String place,
        List<String> inWords) {

    private static final int LONGEST = 1900;

    static PieceDifference between(Piece piece, PieceFacts facts) {
        List<String> shape = new ArrayList<>();
        size(shape, "length", piece.length(), facts.length());
        size(shape, "width", piece.width(), facts.width());
        size(shape, "thickness", piece.thickness(), facts.thickness());
        change(shape, "wood", written(piece.wood()), written(facts.wood()));
        change(shape, "grain", PieceWords.grain(piece.grain()), PieceWords.grain(facts.grain()));
        change(shape, "grain slope 1 in", piece.grainSlope(), facts.grainSlope());
        change(shape, "left trim", piece.trimLeft(), facts.trimLeft());
        change(shape, "right trim", piece.trimRight(), facts.trimRight());
        change(
                shape,
                "defects",
                PieceWords.defects(piece.defects(), piece.width().length()),
                PieceWords.defects(facts.defects(), facts.width().length()));
        Warp warp = facts.warp();
        if (warp != null && !warp.equals(piece.warp())) {
            shape.add("warp on " + warp.readOn() + ": " + PieceWords.warp(warp));
        }
        change(shape, "set aside", piece.setAside(), facts.setAside());
        change(shape, "neck allowed", piece.neckAllowed(), facts.neckAllowed());

        List<String> readings = new ArrayList<>();
        MoistureReading moisture = facts.moisture();
        if (moisture != null && !moisture.equals(piece.moisture())) {
            readings.add("moisture " + moisture.content() + " on " + moisture.readOn());
        }

        List<String> words = new ArrayList<>();
        typed(words, "length", piece.length(), facts.length());
        typed(words, "width", piece.width(), facts.width());
        typed(words, "thickness", piece.thickness(), facts.thickness());
        change(words, "lot", piece.lot(), facts.lot());
        change(words, "lot ready on", piece.lotReadyOn(), facts.lotReadyOn());
        change(words, "cost", piece.cost(), facts.cost());
        if (!piece.note().equals(facts.note())) {
            words.add("the note");
        }
        String place = Objects.equals(piece.place(), facts.place())
                ? null
                : shown(piece.place()) + " → " + shown(facts.place());
        return new PieceDifference(shape, readings, place, words);
    }

    boolean isNothing() {
        return inShape.isEmpty() && inReadings.isEmpty() && place == null && inWords.isEmpty();
    }

    /** One act for each kind of change. */
    List<PieceChanged> acts(Piece before, Piece after) {
        List<PieceChanged> acts = new ArrayList<>();
        List<String> measured = new ArrayList<>(inShape);
        measured.addAll(inReadings);
        Volume now = before.volumeThere();
        if (!measured.isEmpty()) {
            acts.add(act(PieceChanged.Kind.MEASURED, before.volumeThere(), after, sentence("", measured)));
            now = after.volumeThere();
        }
        if (place != null) {
            acts.add(act(PieceChanged.Kind.MOVED, now, after, place + "."));
        }
        if (!inWords.isEmpty()) {
            acts.add(act(PieceChanged.Kind.DESCRIBED, now, after, sentence("Changed ", inWords)));
        }
        return acts;
    }

    private static PieceChanged act(PieceChanged.Kind kind, Volume before, Piece after, String detail) {
        return new PieceChanged(kind, after.code(), before, after.volumeThere(), null, detail);
    }

    private static String sentence(String start, List<String> changes) {
        String all = start + String.join("; ", changes) + ".";
        String text = all.length() > LONGEST ? all.substring(0, LONGEST) + "…" : all;
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private static String written(PieceWood wood) {
        return PieceWords.wood(wood) + PieceWords.lamination(wood);
    }

    private static void size(List<String> changes, String name, TypedLength old, TypedLength said) {
        if (!old.length().equals(said.length())) {
            changes.add(name + " " + PieceWords.written(old) + " → " + PieceWords.written(said));
        }
    }

    private static void typed(List<String> changes, String name, TypedLength old, TypedLength said) {
        if (old.length().equals(said.length()) && !old.typed().equals(said.typed())) {
            changes.add(name + " written " + said.typed() + " instead of " + old.typed());
        }
    }

    private static void change(List<String> changes, String name, @Nullable Object old, @Nullable Object said) {
        if (!Objects.equals(old, said)) {
            changes.add(name + " " + shown(old) + " → " + shown(said));
        }
    }

    private static String shown(@Nullable Object value) {
        String text = value == null ? "" : String.valueOf(value);
        return text.isEmpty() ? "nothing" : text;
    }
}
