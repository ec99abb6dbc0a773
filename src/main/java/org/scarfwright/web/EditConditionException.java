package org.scarfwright.web;

import org.springframework.http.HttpStatus;

/** An edit over the API came without, or with an outdated, {@code If-Match}. */
public class EditConditionException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final HttpStatus status;

    private EditConditionException(HttpStatus status, String message) {
        super(message);
        this.status = status;
    }

    /** Answered with 428: an edit must say which version it saw. */
    public static EditConditionException missing() {
        return new EditConditionException(
                HttpStatus.PRECONDITION_REQUIRED, "Send If-Match with the ETag you read, so that no edit is lost.");
    }

    /** Answered with 412: somebody edited it since. */
    public static EditConditionException stale() {
        return new EditConditionException(
                HttpStatus.PRECONDITION_FAILED, "It was changed since you read it; read it again and repeat the edit.");
    }

    HttpStatus status() {
        return status;
    }
}
