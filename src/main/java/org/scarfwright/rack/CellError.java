package org.scarfwright.rack;

import org.scarfwright.web.FieldError;

/**
 * What is wrong with one cell.
 *
 * @param item which strip or defect, counted from 0; -1 when the cell is not a list
 * @param value what was given
 * @param message reads on from the field's label
 */
public record CellError(PieceField field, int item, String value, String message) {
    /** As a page's form shows it. */
    public FieldError onForm() {
        return new FieldError("/" + field.column(), field.label(), value, message);
    }
}
