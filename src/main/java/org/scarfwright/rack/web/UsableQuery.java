package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.rack.Piece;
import org.scarfwright.web.FieldError;

/**
 * A thickness and a width somebody asks a piece for.
 *
 * @param thickness finished; empty when not asked or not readable
 * @param width to which the piece is ripped before it is flattened; empty for its whole width
 * @param errors what could not be read
 */
record UsableQuery(@Nullable Length thickness, @Nullable Length width, List<FieldError> errors) {
    UsableQuery {
        errors = List.copyOf(errors);
    }

    /** @param suffix what the names end in: nothing on a page, Mm in the API */
    static UsableQuery of(Map<String, String> asked, String suffix, LengthUnit unit, Piece piece) {
        List<FieldError> errors = new ArrayList<>();
        Length thickness = read(
                asked,
                "thickness" + suffix,
                "Thickness",
                unit,
                piece.thickness().length(),
                errors);
        Length width =
                read(asked, "width" + suffix, "Width", unit, piece.width().length(), errors);
        return new UsableQuery(thickness, width, errors);
    }

    private static @Nullable Length read(
            Map<String, String> asked,
            String name,
            String label,
            LengthUnit unit,
            Length most,
            List<FieldError> errors) {
        String text = asked.getOrDefault(name, "").strip();
        if (text.isEmpty()) {
            return null;
        }
        String wrong;
        try {
            Length length = LengthParser.parse(text, unit);
            if (length.isPositive() && !length.isLongerThan(most)) {
                return length;
            }
            String shown = text.length() > 40 ? text.substring(0, 40) + "…" : text;
            wrong = "“" + shown + "” is not more than 0 and at most what the piece has, " + most;
        } catch (MeasureFormatException e) {
            wrong = String.valueOf(e.getMessage());
        }
        errors.add(new FieldError("/" + name, label, text, wrong));
        return null;
    }
}
