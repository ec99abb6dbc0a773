package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.FieldError;

/**
 * What a list of pieces was asked for, as raw text.
 *
 * @param suffix what the names of the three lengths end in: nothing on a page, Mm in the API
 */
public record FilterForm(Map<String, String> texts, LengthUnit unit, String suffix) {
    private static final int LONGEST_WORDS = 200;
    private static final int LAST_PAGE = 1_000_000;

    public FilterForm {
        texts = Map.copyOf(texts);
    }

    /**
     * What was asked, as far as it could be read.
     *
     * @param errors what could not; the list is then not narrowed by it
     */
    public record Asked(PieceFilter filter, PieceFilter.Sort sort, int page, int size, List<FieldError> errors) {}

    /** What was given under a name, stripped; empty when nothing was. */
    public String text(String name) {
        return texts.getOrDefault(name, "").strip();
    }

    /**
     * @param usualSize pieces on a page when none is asked for
     * @param largestSize the most that may be asked for
     */
    public Asked read(WoodNames woods, int usualSize, int largestSize) {
        List<FieldError> errors = new ArrayList<>();
        String words = text("q");
        if (words.length() > LONGEST_WORDS) {
            errors.add(error("q", "Words", "is longer than " + LONGEST_WORDS + " characters; write fewer words"));
            words = "";
        }
        String wood = null;
        if (!text("wood").isEmpty()) {
            Optional<String> found = woods.find(text("wood"));
            wood = found.orElse(null);
            if (found.isEmpty()) {
                errors.add(error("wood", "Wood", woods.unknown(text("wood"))));
            }
        }
        PieceFilter filter = new PieceFilter(
                words,
                wood,
                oneOf("state", "State", PieceState.values(), errors),
                text("place").isEmpty() ? null : text("place").replace("\0", ""),
                length("minLength" + suffix, "Shortest", errors),
                length("minWidth" + suffix, "Narrowest", errors),
                length("minThickness" + suffix, "Thinnest", errors),
                oneOf("can", "Can be", PieceFilter.Can.values(), errors));
        PieceFilter.Sort sort = oneOf("sort", "Sort", PieceFilter.Sort.values(), errors);
        return new Asked(
                filter,
                sort == null ? PieceFilter.Sort.CODE : sort,
                whole("page", "Page", 1, LAST_PAGE, errors),
                whole("size", "Size", usualSize, largestSize, errors),
                List.copyOf(errors));
    }

    private FieldError error(String name, String label, String message) {
        return new FieldError("/" + name, label, text(name), message);
    }

    private @Nullable Length length(String name, String label, List<FieldError> errors) {
        if (text(name).isEmpty()) {
            return null;
        }
        try {
            return LengthParser.parse(text(name), unit);
        } catch (MeasureFormatException e) {
            errors.add(error(name, label, String.valueOf(e.getMessage())));
            return null;
        }
    }

    private int whole(String name, String label, int usual, int most, List<FieldError> errors) {
        String text = text(name);
        if (text.isEmpty()) {
            return usual;
        }
        int number = text.matches("\\d{1,7}") ? Integer.parseInt(text) : 0;
        if (number < 1 || number > most) {
            errors.add(error(name, label, "“" + shown(text) + "” is not a whole number from 1 to " + most));
            return usual;
        }
        return number;
    }

    private <E extends Enum<E>> @Nullable E oneOf(String name, String label, E[] values, List<FieldError> errors) {
        String text = text(name);
        if (text.isEmpty()) {
            return null;
        }
        for (E value : values) {
            if (value.name().equals(text.toUpperCase(Locale.ROOT).replace(' ', '_'))) {
                return value;
            }
        }
        errors.add(error(
                name,
                label,
                "“" + shown(text) + "” is not one of "
                        + Stream.of(values)
                                .map(e -> e.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))));
        return null;
    }

    private static String shown(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "…" : text;
    }
}
