package org.scarfwright.rack;

/** Somebody changed a piece while another person was editing it. */
public class PieceChangedSinceException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public PieceChangedSinceException(String code) {
        super("Piece " + code
                + " was changed since you opened it. Your text is kept; look at the piece and save again.");
    }
}
