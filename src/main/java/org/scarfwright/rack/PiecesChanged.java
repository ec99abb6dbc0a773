package org.scarfwright.rack;

import java.util.List;

/** What one act did to pieces, in order; published inside the transaction that did it. An import is one act. */
public record PiecesChanged(List<PieceChanged> changes) {
    public PiecesChanged {
        changes = List.copyOf(changes);
    }
}
