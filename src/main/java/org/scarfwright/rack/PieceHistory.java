package org.scarfwright.rack;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the ledger knows of a piece. The ledger room provides it, because it knows the rack and not the other way round. */
public interface PieceHistory {
    /** The newest first. */
    List<Entry> of(String code);

    /** How far the ledger has come. */
    Stamp stamp();

    /** Codes of the pieces that entries after a stamp touched; empty when the ledger never stood there. */
    Optional<Set<String>> touchedSince(Stamp stamp);

    /**
     * How far the ledger had come.
     *
     * @param entry number of its last entry; 0 without one
     * @param hash of that entry, which holds those of all before it
     */
    record Stamp(long entry, String hash) {}

    /**
     * One act.
     *
     * @param entry its number in the ledger
     * @param what in plain words, such as Measured
     */
    record Entry(long entry, Instant at, String who, String what, String detail) {}
}
