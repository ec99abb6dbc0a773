package org.scarfwright.ledger.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Losses.LostPart;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.rack.Cutting;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/**
 * Which parts of a neck are written off, and what is kept of each, as a person types it: {@code neck} and {@code head} are
 * {@code true} for parts that are lost; {@code neck-length} and so on say what is kept.
 */
final class WriteOffForm {
    private static final Length SHORTEST = Length.ofMm(1);
    private static final int LONGEST_PLACE = 60;

    private final Map<String, String> typed;
    private final LengthUnit unit;
    private final List<FieldError> errors = new ArrayList<>();

    private WriteOffForm(Map<String, String> typed, LengthUnit unit) {
        this.typed = typed;
        this.unit = unit;
    }

    /** @throws InvalidInputException naming every field that cannot be read */
    static List<LostPart> read(Map<String, String> typed, LengthUnit unit) {
        WriteOffForm form = new WriteOffForm(typed, unit);
        List<LostPart> lost = new ArrayList<>();
        for (boolean head : new boolean[] {false, true}) {
            String part = head ? "head" : "neck";
            List<Cutting.Rest> rests = form.kept(part).stream().toList();
            if (form.text(part).equals("true")) {
                lost.add(new LostPart(head, rests));
            } else if (!rests.isEmpty()) {
                form.wrong(
                        part + "-length",
                        "Length kept of the " + part,
                        "is given, but the " + part + " is not written off; tick it, or leave this empty");
            }
        }
        if (!form.errors.isEmpty()) {
            throw new InvalidInputException(form.errors);
        }
        return lost;
    }

    private String text(String name) {
        return typed.getOrDefault(name, "").strip();
    }

    private void wrong(String name, String label, String message) {
        errors.add(new FieldError("/" + name, label, text(name), message));
    }

    private Optional<Cutting.Rest> kept(String part) {
        if (text(part + "-length").isEmpty()
                && text(part + "-width").isEmpty()
                && text(part + "-thickness").isEmpty()) {
            return Optional.empty();
        }
        TypedLength length = length(part + "-length", "Length kept of the " + part);
        TypedLength width = length(part + "-width", "Width kept of the " + part);
        TypedLength thickness = length(part + "-thickness", "Thickness kept of the " + part);
        String place = text(part + "-place");
        if (place.length() > LONGEST_PLACE) {
            wrong(
                    part + "-place",
                    "Place of what is kept of the " + part,
                    "has more than " + LONGEST_PLACE + " characters");
        }
        return length == null || width == null || thickness == null
                ? Optional.empty()
                : Optional.of(new Cutting.Rest(
                        new Cutting.Size(length, width, thickness),
                        null,
                        null,
                        place.isEmpty() ? null : place,
                        "",
                        null));
    }

    private @Nullable TypedLength length(String name, String label) {
        if (text(name).isEmpty()) {
            wrong(name, label, "is empty; write all three sizes of what is kept, or none");
            return null;
        }
        try {
            TypedLength read = TypedLength.parse(text(name), unit);
            if (read.length().isShorterThan(SHORTEST)) {
                wrong(name, label, "is shorter than " + SHORTEST + "; write for example 120");
                return null;
            }
            return read;
        } catch (MeasureFormatException e) {
            wrong(name, label, String.valueOf(e.getMessage()));
            return null;
        }
    }
}
