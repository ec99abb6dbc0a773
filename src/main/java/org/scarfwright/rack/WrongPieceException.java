package org.scarfwright.rack;

import java.util.List;
import java.util.stream.Collectors;

/** What was written about a piece cannot be saved. */
public class WrongPieceException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<CellError> errors;

    public WrongPieceException(List<CellError> errors) {
        super(errors.stream().map(e -> e.onForm().sentence()).collect(Collectors.joining(" ")));
        this.errors = List.copyOf(errors);
    }

    public List<CellError> errors() {
        return errors;
    }
}
