package org.scarfwright.ledger;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.EntryTable.Became;
import org.scarfwright.measure.Money;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.Rack;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class OriginService implements NeckOrigins {
    /** Nobody cuts a rest of a rest more often; a chain that is longer is cut off. */
    private static final int DEEPEST = 50;

    private final EntryTable table;
    private final Rack rack;

    OriginService(EntryTable table, Rack rack) {
        this.table = table;
        this.rack = rack;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Origin> of(Losses.Neck neck) {
        List<Part> parts = new ArrayList<>();
        String design = "";
        for (Became b : table.becameNeck(neck)) {
            Outcome.NeckPart part = b.outcome().neck();
            if (part != null) {
                design = part.design();
                List<String> pieces = ancestors(b.outcome().fromPiece());
                parts.add(new Part(
                        part.head(),
                        b.outcome().kind() == Outcome.Kind.WASTE,
                        b.outcome().volume(),
                        b.outcome().cost(),
                        pieces,
                        lot(pieces),
                        b.entry()));
            }
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(new Origin(design, cost(parts), parts));
    }

    private static @Nullable Money cost(List<Part> parts) {
        Money sum = Money.ZERO;
        for (Part part : parts) {
            if (part.cost() == null) {
                return null;
            }
            sum = sum.plus(part.cost());
        }
        return sum;
    }

    private List<String> ancestors(String code) {
        Set<String> pieces = new LinkedHashSet<>(List.of(code));
        String at = code;
        Optional<String> parent = table.parent(at);
        while (parent.isPresent() && pieces.size() < DEEPEST && pieces.add(parent.get())) {
            at = parent.get();
            parent = table.parent(at);
        }
        return List.copyOf(pieces);
    }

    private @Nullable String lot(List<String> pieces) {
        return rack.find(pieces.get(pieces.size() - 1)).map(Piece::lot).orElse(null);
    }
}
