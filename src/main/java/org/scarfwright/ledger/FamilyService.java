package org.scarfwright.ledger;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.EntryTable.Became;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Rack;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class FamilyService implements FamilyTree {
    private final EntryTable table;
    private final Rack rack;

    FamilyService(EntryTable table, Rack rack) {
        this.table = table;
        this.rack = rack;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Tree> of(String code) {
        return rack.find(code).map(piece -> {
            Piece first = first(piece);
            Growth growth = new Growth();
            Branch root = growth.piece(first, null);
            return new Tree(first.lot(), root, growth.seen.size() + growth.parts <= MOST);
        });
    }

    private Piece first(Piece piece) {
        Set<String> seen = new HashSet<>(List.of(piece.code()));
        Piece at = piece;
        Optional<Piece> parent = table.parent(at.code()).flatMap(rack::find);
        while (parent.isPresent() && seen.add(parent.get().code())) {
            at = parent.get();
            parent = table.parent(at.code()).flatMap(rack::find);
        }
        return at;
    }

    /** Grows one tree and counts its branches. */
    private final class Growth {
        private final Set<String> seen = new HashSet<>();
        private int parts;

        /** @param rest how it came to be; empty for the first piece */
        Branch piece(Piece piece, @Nullable Outcome rest) {
            seen.add(piece.code());
            List<Branch> branches = new ArrayList<>();
            Money given = Money.ZERO;
            for (Became b : table.becameOf(piece.code())) {
                Outcome o = b.outcome();
                given = o.cost() == null ? given : given.plus(o.cost());
                if (seen.size() + parts < MOST) {
                    branch(o).ifPresent(branches::add);
                } else {
                    parts++;
                }
            }
            Outcome.Size size = rest == null ? null : rest.size();
            return new Branch(
                    Kind.PIECE,
                    piece.code(),
                    null,
                    PieceWords.state(piece.state()),
                    size == null ? piece.length().length() : size.length(),
                    size == null ? piece.width().length() : size.width(),
                    rest == null ? piece.volumeThere().plus(table.taken(piece.code())) : rest.volume(),
                    rest == null ? whole(piece, given) : rest.cost(),
                    branches);
        }

        /** What the first piece cost before anything was cut from it. */
        private static @Nullable Money whole(Piece piece, Money given) {
            Money now = piece.cost();
            if (now == null) {
                return null;
            }
            if (piece.state().isThere()) {
                return now.plus(given);
            }
            return given.cents() > 0 ? given : now;
        }

        private Optional<Branch> branch(Outcome o) {
            Outcome.NeckPart part = o.neck();
            String to = o.toPiece();
            if (to != null) {
                return seen.contains(to) ? Optional.empty() : rack.find(to).map(p -> piece(p, o));
            }
            if (part == null) {
                return Optional.empty();
            }
            parts++;
            Outcome.Size size = o.size();
            return Optional.of(new Branch(
                    o.kind() == Outcome.Kind.WASTE ? Kind.SPOILT : part.head() ? Kind.HEAD : Kind.NECK,
                    part.title(),
                    new Losses.Neck(part.plan(), part.order(), part.number()),
                    "",
                    size == null ? Length.ZERO : size.length(),
                    size == null ? Length.ZERO : size.width(),
                    o.volume(),
                    o.cost(),
                    List.of()));
        }
    }
}
