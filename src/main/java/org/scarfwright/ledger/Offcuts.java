package org.scarfwright.ledger;

import java.util.List;
import org.scarfwright.rack.Piece;

/** Rests that lie on the rack and that no accepted plan ever took. */
public interface Offcuts {
    /** Usual age, in months. */
    int USUAL_MONTHS = 6;

    int MOST_MONTHS = 600;

    /**
     * Rests on the rack that came there at least so many months ago and that no accepted plan ever reserved, the oldest first; at
     * most {@link Losses#MOST_PIECES}.
     *
     * @param months 0 to {@link #MOST_MONTHS}
     */
    List<Piece> unwanted(int months);
}
