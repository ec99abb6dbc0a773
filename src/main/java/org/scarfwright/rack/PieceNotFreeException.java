package org.scarfwright.rack;

import java.util.List;

/** Pieces that could not be reserved; each reason is a sentence that names the piece. */
public class PieceNotFreeException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final List<String> reasons;

    public PieceNotFreeException(List<String> reasons) {
        super(String.join(" ", reasons));
        this.reasons = List.copyOf(reasons);
    }

    PieceNotFreeException(List<String> reasons, Throwable cause) {
        super(String.join(" ", reasons), cause);
        this.reasons = List.copyOf(reasons);
    }

    public List<String> reasons() {
        return reasons;
    }
}
