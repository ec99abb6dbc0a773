package org.scarfwright.rack;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.web.FieldError;

/**
 * What a rack file would become, or became.
 *
 * @param rows every row of the file, in its order
 * @param errors everything that is wrong; empty when the file can be saved
 * @param saved true when the rows that are new are on the rack now
 */
public record ImportResult(List<Row> rows, List<FieldError> errors, boolean saved) {
    public ImportResult {
        rows = List.copyOf(rows);
        errors = List.copyOf(errors);
    }

    public long added() {
        return rows.stream().filter(r -> r.outcome() == Outcome.NEW).count();
    }

    public long unchanged() {
        return rows.stream().filter(r -> r.outcome() == Outcome.UNCHANGED).count();
    }

    public long refused() {
        return rows.stream().filter(r -> r.outcome() == Outcome.REFUSED).count();
    }

    /** What becomes of a row. */
    public enum Outcome {
        NEW,
        UNCHANGED,
        REFUSED
    }

    /**
     * One row.
     *
     * @param number as a spreadsheet numbers it; the header is row 1
     * @param code of the piece; empty when one will be made, or when the row is refused
     * @param facts empty when the row is refused
     * @param remark what a person should know about an unchanged row; empty when nothing
     */
    public record Row(
            int number,
            Outcome outcome,
            @Nullable String code,
            @Nullable PieceFacts facts,
            String remark) {}
}
