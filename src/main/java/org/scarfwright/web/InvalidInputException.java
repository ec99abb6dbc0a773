package org.scarfwright.web;

import java.util.List;
import java.util.stream.Collectors;

/** Input that was refused as a whole; nothing of it was saved. Answered with 422 and every error at once. */
public class InvalidInputException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<FieldError> errors;

    public InvalidInputException(List<FieldError> errors) {
        super(errors.stream().map(FieldError::sentence).collect(Collectors.joining(" ")));
        this.errors = List.copyOf(errors);
    }

    public InvalidInputException(FieldError error) {
        this(List.of(error));
    }

    public List<FieldError> errors() {
        return errors;
    }
}
