package org.scarfwright.matching;

import java.util.List;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.NotFoundException;

/** How many more necks the rack can still give, found by matching them against it. */
public interface RunsShort {
    /** How many necks are asked for at most: a rack that gives more is not short of anything. */
    int MOST = 24;

    /** How long a search looks at most, in seconds. Choice of this program. */
    int SECONDS = 5;

    /** Codes of the designs on file, in order. */
    List<DesignName> designs();

    /**
     * Matches up to {@link #MOST} necks of one design with the free pieces as they are today, as if nothing else were made.
     * Nothing is saved. Decisions by hand belong to weeks and are not looked at.
     *
     * @throws NotFoundException when there is no such design
     * @throws ConflictException when another search is still running
     */
    Answer more(String design);

    record DesignName(String code, String name) {}

    /**
     * @param necks that many can be made
     * @param proved more cannot; otherwise the search stopped before it knew
     * @param free pieces nobody has reserved
     * @param pieces codes of those the necks would be cut from, in order
     */
    record Answer(String design, int necks, boolean proved, int free, List<String> pieces) {
        public Answer {
            pieces = List.copyOf(pieces);
        }

        /** As many as were asked for; there may be more. */
        public boolean all() {
            return necks >= MOST;
        }
    }
}
