package org.scarfwright.web;

/** The thing changed meanwhile, or stands in a state that does not allow the act. Answered with 409. */
public class ConflictException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param message a sentence that says what is in the way and what to do */
    public ConflictException(String message) {
        super(message);
    }

    public ConflictException(String message, Throwable cause) {
        super(message, cause);
    }
}
