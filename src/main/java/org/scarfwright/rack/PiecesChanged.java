package org.scarfwright.rack;

import java.util.List;
import java.util.Set;

/**
 * What one doing did to pieces, in order; published inside the transaction that did it. An import is one doing.
 *
 * @param outcomes what became of wood that was taken from them
 * @param lots keys of lots whose day of readiness changed: every piece of them changed with it
 */
public record PiecesChanged(Doing doing, List<PieceChanged> changes, List<Outcome> outcomes, Set<String> lots) {
    public PiecesChanged {
        changes = List.copyOf(changes);
        outcomes = List.copyOf(outcomes);
        lots = Set.copyOf(lots);
    }

    public PiecesChanged(Doing doing, List<PieceChanged> changes) {
        this(doing, changes, List.of(), Set.of());
    }
}
