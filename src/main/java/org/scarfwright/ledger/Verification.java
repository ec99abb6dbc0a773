package org.scarfwright.ledger;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Holds the ledger against itself and against the rack: that the chain of hashes is whole, that no wood appears or disappears in
 * an entry, that the sums are those of the acts, and that every piece is what its last act left it as.
 */
public interface Verification {
    /** How many faults a report names; the others are only counted. */
    int MOST_NAMED = 200;

    /** Goes through everything, in one snapshot, while others go on working, and waits until it is done. */
    Report run();

    /**
     * Begins to go through everything, on a thread of its own; does nothing where that was begun already.
     *
     * @param patience how long to wait for the end at the most
     * @return what came of it; empty when it is not done yet
     */
    Optional<Report> begin(Duration patience);

    /** How far it is; empty when nobody is going through it. */
    Optional<Going> going();

    /** What came of the last time; empty until the program has gone through it once since it started. */
    Optional<Report> last();

    /**
     * On its way.
     *
     * @param entries that were read
     * @param of how many there were when it was begun
     */
    record Going(Instant begun, long entries, long of) {}

    /**
     * What was found.
     *
     * @param at when it was begun
     * @param faults the first of what is wrong, one sentence each that names the entry or the piece; empty when all is well
     * @param faultCount how many there are
     */
    record Report(
            Instant at, Duration took, long entries, long acts, long pieces, List<String> faults, long faultCount) {
        public Report {
            faults = List.copyOf(faults);
        }

        public boolean isSound() {
            return faultCount == 0;
        }
    }
}
