package org.scarfwright.matching;

import java.time.Instant;
import java.util.List;
import org.scarfwright.necks.IsoWeek;

/** What people decided about a week by hand. It holds from the next match on and never changes a plan that is made already. */
public interface Hands {
    /** In the order they were made. */
    List<Kept> of(IsoWeek week);

    /**
     * Notes a decision; one that is noted already is returned and not noted twice.
     *
     * @throws org.scarfwright.web.InvalidInputException when it names an order or a piece that is none, contradicts another
     *     decision, or cannot hold: then with the sentence of the rule that refuses
     */
    Kept add(IsoWeek week, Hand hand);

    /**
     * Takes a decision back.
     *
     * @throws org.scarfwright.web.NotFoundException when the week has no such decision
     */
    void undo(IsoWeek week, long id);

    /** A decision as it is kept. */
    record Kept(long id, Hand hand, Instant madeAt) {}
}
