package org.scarfwright.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;

/**
 * The values of an address, read as raw text so that everything that is wrong with them is told at once: missing, given twice,
 * or not what they should be.
 */
public class QueryText {
    private final Map<String, String[]> values;
    private final List<FieldError> errors = new ArrayList<>();

    /** @param values as the request has them, each name with every value it was given */
    public QueryText(Map<String, String[]> values) {
        this.values = values;
    }

    /** Whether any value has this name. */
    public boolean has(String name) {
        return values.containsKey(name);
    }

    /** The first value as typed; empty when there is none. */
    public String typed(String name) {
        String[] given = values.get(name);
        return given == null || given.length == 0 ? "" : given[0];
    }

    /**
     * Reads one value.
     *
     * @param example what would be right, for the sentence about a missing one
     * @param reader throws {@link MeasureFormatException} with what is wrong
     * @return null when it was refused; the reason is then among {@link #errors()}
     */
    public <T> @Nullable T read(String name, String label, String example, Function<String, T> reader) {
        String[] given = values.get(name);
        if (given == null || given.length == 0) {
            refuse(name, label, "is missing; give for example " + name + "=" + example);
            return null;
        }
        if (given.length > 1) {
            refuse(
                    name,
                    label,
                    "is given " + given.length + " times; give it once, for example " + name + "=" + example);
            return null;
        }
        try {
            return reader.apply(given[0]);
        } catch (MeasureFormatException e) {
            refuse(name, label, String.valueOf(e.getMessage()));
            return null;
        }
    }

    /** Adds a reason of the caller's own. */
    public void refuse(String name, String label, String message) {
        errors.add(new FieldError("/" + name, label, typed(name), message));
    }

    /** Everything that was refused so far, in the order of reading. */
    public List<FieldError> errors() {
        return List.copyOf(errors);
    }

    /** @throws InvalidInputException when anything was refused */
    public void check() {
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
    }
}
