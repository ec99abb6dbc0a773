package org.scarfwright.ledger;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

/** Where the wood of a neck came from. */
public interface NeckOrigins {
    /** Empty when no cut of the neck was recorded, or every one was taken back. */
    Optional<Origin> of(Losses.Neck neck);

    /**
     * @param cost of all its parts, spoilt ones too; empty when nobody knows what one of their pieces cost
     */
    record Origin(String design, @Nullable Money cost, List<Part> parts) {
        public Origin {
            parts = List.copyOf(parts);
        }
    }

    /**
     * @param spoilt it was cut wrong or written off
     * @param cost its share of what its piece cost
     * @param pieces the piece it was cut from, the piece that one was cut from, and so on
     * @param lot the lot they came in; empty when none is known
     * @param entry the entry of the cut
     */
    record Part(
            boolean head,
            boolean spoilt,
            Volume volume,
            @Nullable Money cost,
            List<String> pieces,
            @Nullable String lot,
            long entry) {
        public Part {
            pieces = List.copyOf(pieces);
        }
    }
}
