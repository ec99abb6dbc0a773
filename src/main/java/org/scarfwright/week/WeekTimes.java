package org.scarfwright.week;

import java.util.Optional;
import org.scarfwright.week.WorkStep.Span;

/** When a step is on the week: where it was done, else where it is planned. */
public final class WeekTimes {
    private WeekTimes() {}

    /** What was done lasts from its start; where nobody noted a start, as long as was recorded or planned. */
    public static Optional<Span> of(WorkStep step) {
        return step.progress()
                .doneAt()
                .map(done -> new Span(
                        step.progress()
                                .startedAt()
                                .filter(started -> started.isBefore(done))
                                .orElseGet(() -> done.minusSeconds(
                                        60L * step.progress().minutes().orElse(step.minutes()))),
                        done))
                .or(step::planned);
    }
}
