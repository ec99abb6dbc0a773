package org.scarfwright.week;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.scarfwright.shop.Glue;
import org.scarfwright.week.WorkStep.Neck;

/**
 * A neck to be laid and what the schedule must know of it.
 *
 * @param steps all of its steps, in order
 * @param due it should be done before
 * @param weight what being late counts
 * @param notBefore nothing of it starts before: its week, or the day its wood is ready
 * @param glue what it is glued with
 * @param withinTheHour its wood bonds with difficulty: glue within the hour after truing
 */
record NeckFacts(
        Neck neck,
        List<WorkStep> steps,
        Instant due,
        int weight,
        Instant notBefore,
        Optional<Glue> glue,
        boolean withinTheHour) {
    NeckFacts {
        steps = List.copyOf(steps);
    }
}
