package org.scarfwright.rack;

import java.time.LocalDate;
import java.util.List;
import org.scarfwright.measure.Volume;

/** How long the wood of the rack has been there. */
public interface RackAge {
    /** Pieces that are there, by the day they came; the earliest first. */
    List<Day> days();

    /** The pieces that came from one day to another, both with them, in the order they came; at most {@code most}. */
    List<Piece> cameBetween(LocalDate first, LocalDate last, int most);

    /** What came on one day and is still there. */
    record Day(LocalDate since, int pieces, Volume volume) {}
}
