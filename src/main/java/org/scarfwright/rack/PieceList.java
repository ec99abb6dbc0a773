package org.scarfwright.rack;

import java.util.List;

/**
 * One page of a list.
 *
 * @param page counted from 1
 * @param pages at least 1
 * @param total pieces on all pages
 */
public record PieceList(List<Piece> pieces, int page, int pages, long total) {
    public PieceList {
        pieces = List.copyOf(pieces);
    }
}
