package org.scarfwright.week;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plan.Pairing;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.WorkStep.Needs;
import org.scarfwright.week.WorkStep.Part;
import org.scarfwright.week.WorkStep.Progress;

/** The steps of a plan's necks, as they are first written down. */
final class PlanSteps {
    private final Plan plan;
    private final Workshop workshop;
    private final Map<String, PieceLayout> layouts = new HashMap<>();
    private final Set<String> flattened = new HashSet<>();
    private final List<WorkStep> steps = new ArrayList<>();

    private PlanSteps(Plan plan, Workshop workshop) {
        this.plan = plan;
        this.workshop = workshop;
        plan.layouts().forEach(l -> layouts.put(l.piece(), l));
    }

    static List<WorkStep> of(Plan plan, Workshop workshop) {
        PlanSteps all = new PlanSteps(plan, workshop);
        plan.pairings().forEach(all::add);
        return all.steps;
    }

    private void add(Pairing p) {
        Neck neck = new Neck(plan.id(), plan.week(), p.order(), p.number());
        int before = steps.size();
        Map<Part, Plan.Part> parts = new java.util.EnumMap<>(Map.of(Part.NECK, p.neck(), Part.HEAD, p.head()));
        parts.forEach((part, wood) -> {
            if (flattened.add(wood.piece())) {
                step(
                        neck,
                        before,
                        StepKind.FLATTEN,
                        part,
                        needs(wood, Optional.of(WorkProblem.PLANER), Optional.empty()));
            }
        });
        parts.forEach((part, wood) -> {
            PieceLayout layout = layouts.get(wood.piece());
            Optional<String> saw = Optional.ofNullable(layout).map(PieceLayout::saw);
            Optional<String> setUp = saw.map(s -> p.angle() + " at " + wood.thickness() + " on " + s);
            step(neck, before, StepKind.CUT, part, needs(wood, saw, setUp));
        });
        parts.forEach((part, wood) ->
                step(neck, before, StepKind.TRUE, part, needs(wood, Optional.empty(), Optional.empty())));
        for (StepKind kind : List.of(StepKind.FIT, StepKind.GLUE, StepKind.UNCLAMP, StepKind.SQUARE_UP)) {
            step(neck, before, kind, Part.BOTH, Needs.NOTHING);
        }
    }

    private static Needs needs(Plan.Part wood, Optional<String> machine, Optional<String> setUp) {
        return new Needs(Optional.of(wood.piece()), machine, setUp);
    }

    private void step(Neck neck, int before, StepKind kind, Part part, Needs needs) {
        steps.add(new WorkStep(
                0,
                0,
                neck,
                steps.size() - before + 1,
                kind,
                part,
                needs,
                workshop.minutesOf(kind),
                Optional.empty(),
                Optional.empty(),
                Progress.NONE));
    }
}
