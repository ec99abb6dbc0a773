package org.scarfwright.rack.web;

import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.EditVersion;

/**
 * What an editor of a piece saw. A piece that is reserved and freed again is the same wood under the same version, but an
 * answer that says reserved is not the answer that says free, so the state is part of the tag.
 */
final class PieceTag {
    private PieceTag() {}

    static String of(Piece piece) {
        return piece.state() == PieceState.ON_RACK
                ? EditVersion.etag(piece.version())
                : "\"" + piece.version() + "-" + PieceJson.word(piece.state()) + "\"";
    }

    /** @throws EditConditionException when the header is missing or names another state of the piece */
    static void check(@Nullable String ifMatch, Piece piece) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw EditConditionException.missing();
        }
        if (!ifMatch.strip().equals(of(piece))) {
            throw EditConditionException.stale();
        }
    }
}
