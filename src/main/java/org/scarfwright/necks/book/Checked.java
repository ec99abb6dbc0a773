package org.scarfwright.necks.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/**
 * What becomes of one entry.
 *
 * @param value what was read; empty when it was refused
 * @param errors why it was refused
 */
public record Checked<T>(Entry entry, Fate fate, Optional<T> value, List<FieldError> errors) {
    public Checked {
        errors = List.copyOf(errors);
    }

    /** What becomes of an entry. */
    public enum Fate {
        /** There is none like it yet; it is added. */
        NEW,
        /** The same is kept already; nothing happens. */
        UNCHANGED,
        REFUSED
    }

    static <T> Checked<T> accepted(Entry entry, Fate fate, T value) {
        return new Checked<>(entry, fate, Optional.of(value), List.of());
    }

    static <T> Checked<T> refused(Entry entry, Reading<T> reading) {
        List<FieldError> errors = new ArrayList<>(entry.faults());
        reading.flaws().forEach(flaw -> errors.add(entry.error(flaw)));
        return new Checked<>(entry, Fate.REFUSED, Optional.empty(), errors);
    }

    static <T> Checked<T> refused(Entry entry, Flaw flaw) {
        return new Checked<>(entry, Fate.REFUSED, Optional.empty(), List.of(entry.error(flaw)));
    }

    /** All errors of all entries, at most as many as one answer carries. */
    public static <T> List<FieldError> errors(List<Checked<T>> all) {
        return CsvTable.first(all.stream().flatMap(c -> c.errors().stream()).toList());
    }

    /** @throws InvalidInputException when one is refused */
    static <T> void requireAll(List<Checked<T>> all) {
        List<FieldError> errors = errors(all);
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
    }
}
