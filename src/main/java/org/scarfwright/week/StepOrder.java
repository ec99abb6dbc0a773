package org.scarfwright.week;

import java.util.List;
import org.scarfwright.shop.StepKind;
import org.scarfwright.week.WorkStep.Part;

/** Which steps come directly before which. */
final class StepOrder {
    private StepOrder() {}

    /** @param ofPlan all steps of the step's plan */
    static List<WorkStep> before(WorkStep step, List<WorkStep> ofPlan) {
        return ofPlan.stream().filter(candidate -> comesBefore(candidate, step)).toList();
    }

    /** @param ofPlan all steps of the step's plan */
    static List<WorkStep> after(WorkStep step, List<WorkStep> ofPlan) {
        return ofPlan.stream().filter(candidate -> comesBefore(step, candidate)).toList();
    }

    private static boolean comesBefore(WorkStep earlier, WorkStep later) {
        boolean sameNeck = earlier.neck().equals(later.neck());
        return switch (later.kind()) {
            case FLATTEN -> false;
            // A piece that gives several parts is flattened once, for whichever neck comes first.
            case CUT ->
                earlier.kind() == StepKind.FLATTEN
                        && earlier.neck().plan() == later.neck().plan()
                        && earlier.needs().piece().equals(later.needs().piece());
            case TRUE -> sameNeck && earlier.kind() == StepKind.CUT && samePart(earlier, later);
            case FIT -> sameNeck && earlier.kind() == StepKind.TRUE;
            case GLUE -> sameNeck && earlier.kind() == StepKind.FIT;
            case UNCLAMP -> sameNeck && earlier.kind() == StepKind.GLUE;
            case SQUARE_UP -> sameNeck && earlier.kind() == StepKind.UNCLAMP;
        };
    }

    private static boolean samePart(WorkStep a, WorkStep b) {
        return a.part() == b.part() || a.part() == Part.BOTH;
    }
}
