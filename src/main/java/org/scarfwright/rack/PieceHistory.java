package org.scarfwright.rack;

import java.time.Instant;
import java.util.List;

/** What the ledger knows of a piece. The ledger room provides it, because it knows the rack and not the other way round. */
public interface PieceHistory {
    /** The newest first. */
    List<Entry> of(String code);

    /**
     * One act.
     *
     * @param entry its number in the ledger
     * @param what in plain words, such as Measured
     */
    record Entry(long entry, Instant at, String who, String what, String detail) {}
}
