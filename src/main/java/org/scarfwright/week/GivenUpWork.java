package org.scarfwright.week;

import java.util.List;
import org.scarfwright.matching.NeckGivenUp;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.shop.StepKind;
import org.scarfwright.week.WorkStep.Neck;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Takes the work of necks that are given up off the days. Belongs into its caller's transaction. */
@Component
class GivenUpWork {
    private final Floor floor;
    private final JdbcWork rows;

    GivenUpWork(Floor floor, JdbcWork rows) {
        this.floor = floor;
        this.rows = rows;
    }

    @EventListener
    void givenUp(NeckGivenUp event) {
        take(event.neck());
    }

    /**
     * What is not done loses its time. A piece is flattened once, for the neck that comes first: where that one is given up and
     * another still needs the piece, it is flattened for the other.
     */
    void take(PlannedNeck given) {
        List<WorkStep> steps = rows.ofPlan(given.plan());
        Floor.Facts facts = floor.of(List.of(given.plan()));
        for (WorkStep step : steps) {
            if (step.isDone() || !step.neck().planned().equals(given)) {
                continue;
            }
            rows.unplan(step.id());
            if (step.kind() == StepKind.FLATTEN) {
                steps.stream()
                        .filter(s -> s.kind() == StepKind.CUT && !s.isDone())
                        .filter(s -> s.needs().piece().equals(step.needs().piece()))
                        .filter(s -> !facts.isGivenUp(s.neck()))
                        .findFirst()
                        .ifPresent(cut -> rows.handOver(step, cut));
            }
        }
        steps.stream()
                .map(WorkStep::neck)
                .filter(n -> n.planned().equals(given))
                .findFirst()
                .ifPresent(rows::forgetRemarks);
    }

    /** The same for every neck of a plan that was given up before its steps were written down. */
    void takeAll(long plan) {
        rows.ofPlan(plan).stream()
                .map(WorkStep::neck)
                .distinct()
                .filter(floor.of(List.of(plan))::isGivenUp)
                .map(Neck::planned)
                .forEach(this::take);
    }
}
