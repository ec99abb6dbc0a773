package org.scarfwright.web;

/** Something that was asked for by name is not there. Answered with 404. */
public class NotFoundException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param message a sentence, such as: There is no piece “K7M”. */
    public NotFoundException(String message) {
        super(message);
    }
}
