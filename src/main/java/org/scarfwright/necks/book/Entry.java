package org.scarfwright.necks.book;

import java.util.List;
import java.util.function.Function;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.FieldError;

/**
 * A draft and the place it came from, so that an error can point there.
 *
 * @param locate turns a flaw into an error that points into the form, the body or the file
 * @param faults what was wrong before the draft could be read: an unknown key, a value of the wrong kind
 * @param repeatable the source may be read again (a file): a row without a code that says the same as something that is kept
 *     already is that thing, not a second one
 */
public record Entry(Draft draft, Function<Flaw, FieldError> locate, List<FieldError> faults, boolean repeatable) {
    public Entry {
        faults = List.copyOf(faults);
    }

    /** From a page's form: {@code /neckLength}. */
    public static Entry ofForm(Draft draft) {
        return new Entry(draft, f -> error("/" + f.field().form(), f), List.of(), false);
    }

    /**
     * From JSON: {@code /neckLengthMm}, or {@code /3/neckLengthMm} in an array.
     *
     * @param parent pointer to the object; empty for the whole body
     */
    public static Entry ofJson(Draft draft, String parent, List<FieldError> faults) {
        return new Entry(draft, f -> error(parent + "/" + f.field().json(), f), faults, false);
    }

    /** From a row of a file: {@code /rows/3/neck_length}. */
    public static Entry ofRow(Draft draft, CsvTable.Row row, List<FieldError> faults) {
        return new Entry(draft, f -> row.error(f.field().column(), f.value(), f.message()), faults, true);
    }

    /** The same entry with one text replaced. */
    public Entry with(Field field, String text) {
        return new Entry(draft.with(field, text), locate, faults, repeatable);
    }

    FieldError error(Flaw flaw) {
        return locate.apply(flaw);
    }

    private static FieldError error(String pointer, Flaw flaw) {
        return new FieldError(pointer, flaw.field().label(), flaw.value(), flaw.message());
    }
}
