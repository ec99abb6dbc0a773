package org.scarfwright.ledger;

import java.util.List;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.PieceChanged;

/**
 * What came in, what went out and what is there, exact to the last cubic micrometre.
 *
 * @param lines one for each kind of act that ever happened, in the order of the kinds
 * @param onRack volume of the pieces that are there, computed from their sizes and not from the ledger
 */
public record Balance(List<Line> lines, Volume onRack) {
    public Balance {
        lines = List.copyOf(lines);
    }

    /**
     * All acts of one kind.
     *
     * @param in what they added
     * @param out what they took away, as a positive volume
     */
    public record Line(PieceChanged.Kind kind, long acts, Volume in, Volume out) {}

    public Volume in() {
        return lines.stream().map(Line::in).reduce(Volume.ZERO, Volume::plus);
    }

    public Volume out() {
        return lines.stream().map(Line::out).reduce(Volume.ZERO, Volume::plus);
    }

    /** What the ledger cannot explain: zero when the books close. */
    public Volume unexplained() {
        return onRack.minus(in().minus(out()));
    }

    public boolean closes() {
        return unexplained().isZero();
    }
}
