package org.scarfwright.ledger;

import java.util.Collection;
import java.util.List;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;

/** Wood that goes another way than planned: spoilt parts, scrapped and sold pieces. Each is an entry with its reason. */
public interface Losses {
    /** How many pieces can be taken away at once. */
    int MOST_PIECES = 500;

    /**
     * Writes parts off that were cut already: a wrong cut that was seen late, a joint that failed. What of them can still be used
     * comes back to the rack.
     *
     * @throws InvalidInputException when no part or no reason is named, or more is kept of a part than it was
     * @throws NotFoundException when no such part was recorded
     * @throws ConflictException when it was written off already, or the code of a rest is taken
     */
    Entry writeOff(Neck neck, List<LostPart> parts, String who, String why);

    /**
     * A part that is lost.
     *
     * @param rests what is kept of it
     */
    record LostPart(boolean head, List<Cutting.Rest> rests) {
        public LostPart {
            rests = List.copyOf(rests);
        }

        /** Nothing of it can be used. */
        public static LostPart whole(boolean head) {
            return new LostPart(head, List.of());
        }
    }

    /**
     * Takes whole pieces away.
     *
     * @param to {@link PieceState#SCRAPPED} or {@link PieceState#SOLD}
     * @throws InvalidInputException when no piece or no reason is named
     * @throws ConflictException naming every piece that changed since or is not there any more; nothing is saved
     */
    Entry remove(Collection<Rack.PieceStamp> pieces, PieceState to, String who, String why);

    /** A neck of a plan. */
    record Neck(long plan, String order, int number) {
        /** A-101 no. 2. */
        public String title() {
            return order + " no. " + number;
        }
    }
}
