package org.scarfwright.week;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.schedule.ScheduleProblem;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Goal;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.ScheduleProblem.Hours;
import org.scarfwright.week.schedule.ScheduleProblem.Resource;
import org.scarfwright.week.schedule.ScheduleProblem.SetUp;
import org.scarfwright.week.schedule.ScheduleProblem.Work;

/** Necks as a problem for the search, and what each of its works is. */
final class WorkProblem {
    /** Faces of a wood that bonds with difficulty are glued within this; common practice. */
    static final Duration FRESH = Duration.ofHours(1);

    static final String PLANER = "planer";

    private static final int CLAMPS = 0;

    private final Workshop workshop;
    private final ShopCalendar calendar;
    private final Instant from;
    private final Map<Neck, NeckFacts> necks = new LinkedHashMap<>();
    private final Map<Long, List<WorkStep>> byPlan = new TreeMap<>();
    private final Map<String, Integer> machines = new LinkedHashMap<>();
    private final Map<Long, Integer> indexes = new LinkedHashMap<>();
    private final List<WorkStep> steps = new ArrayList<>();
    private final List<Work> works = new ArrayList<>();
    private final List<Hold> holds = new ArrayList<>();
    private final List<Goal> goals = new ArrayList<>();
    private final List<Neck> goalNecks = new ArrayList<>();
    private final List<Neck> owners = new ArrayList<>();
    private final Set<Neck> freshen;
    private final Set<Long> again = new LinkedHashSet<>();

    /** What the shop has. */
    record Shop(Workshop workshop, ShopCalendar calendar) {}

    /**
     * @param all every step of the plans of these necks, also of necks that are left out: a piece may be flattened with one of them
     * @param freshen necks whose faces are trued again though they were trued today, because no time is left to glue them today
     */
    WorkProblem(Shop shop, Instant from, List<NeckFacts> toLay, List<WorkStep> all, Set<Neck> freshen) {
        workshop = shop.workshop();
        calendar = shop.calendar();
        this.from = from;
        this.freshen = freshen;
        all.forEach(s ->
                byPlan.computeIfAbsent(s.neck().plan(), k -> new ArrayList<>()).add(s));
        toLay.stream()
                .sorted(Comparator.comparing(NeckFacts::due)
                        .thenComparing(f -> f.neck().order())
                        .thenComparing(f -> f.neck().number()))
                .forEach(f -> necks.put(f.neck(), f));
        necks.values().forEach(this::add);
    }

    private void add(NeckFacts facts) {
        if (staleFaces(facts)) {
            facts.steps().stream()
                    .filter(s -> s.kind() == StepKind.TRUE || s.kind() == StepKind.FIT)
                    .filter(WorkStep::isDone)
                    .forEach(s -> again.add(s.id()));
        }
        facts.steps().forEach(s -> add(s, facts));
        WorkStep last = facts.steps().get(facts.steps().size() - 1);
        Integer index = indexes.get(last.id());
        if (index != null) {
            goals.add(new Goal(facts.neck().title(), index, facts.due(), facts.weight()));
            goalNecks.add(facts.neck());
        }
    }

    /** Faces that were trued on an earlier day and not glued that day are trued again. */
    private boolean staleFaces(NeckFacts facts) {
        boolean glued = facts.steps().stream().anyMatch(s -> s.kind() == StepKind.GLUE && s.isDone());
        if (freshen.contains(facts.neck())) {
            return true;
        }
        LocalDate today = calendar.dayOf(from);
        return !glued
                && facts.steps().stream()
                        .filter(s -> s.kind() == StepKind.TRUE)
                        .flatMap(s -> s.progress().doneAt().stream())
                        .anyMatch(at -> calendar.dayOf(at).isBefore(today));
    }

    private boolean isDone(WorkStep step) {
        return step.isDone() && !again.contains(step.id());
    }

    private void add(WorkStep step, NeckFacts facts) {
        if (isDone(step) || indexes.containsKey(step.id())) {
            return;
        }
        List<After> after = new ArrayList<>();
        Instant notBefore = facts.notBefore();
        Optional<LocalDate> day = step.pinned().filter(d -> !d.isBefore(calendar.dayOf(from)));
        for (WorkStep before : StepOrder.before(step, ofPlan(step))) {
            if (!isDone(before)) {
                add(before, facts);
                after.add(wait(before, step, facts));
            } else if (step.kind() == StepKind.FIT || step.kind() == StepKind.GLUE) {
                // Trued or fitted today: glued today.
                day = Optional.of(calendar.dayOf(from));
            }
        }
        WorkStep glued = only(facts, StepKind.GLUE);
        if (step.kind() == StepKind.GLUE && facts.withinTheHour()) {
            facts.steps().stream()
                    .filter(s -> s.kind() == StepKind.TRUE && indexes.containsKey(s.id()))
                    .forEach(s -> after.add(new After(index(s), Duration.ZERO, Optional.of(FRESH), true)));
        }
        if (step.kind() == StepKind.UNCLAMP && glued.isDone()) {
            notBefore = later(notBefore, glued.progress().clampedUntil());
        }
        if (step.kind() == StepKind.SQUARE_UP) {
            if (glued.isDone()) {
                notBefore = later(notBefore, glued.progress().curedAt());
            } else {
                after.add(After.cure(index(glued), glue(facts).cure()));
            }
        }
        int index = works.size();
        indexes.put(step.id(), index);
        steps.add(step);
        owners.add(facts.neck());
        Optional<Integer> machine = step.needs().machine().map(this::machine);
        works.add(new Work(
                step.title(),
                workshop.minutesOf(step.kind()),
                machine,
                step.needs().setUp().map(name -> new SetUp(name, workshop.setUpMinutes())),
                after,
                notBefore.isAfter(from) ? Optional.of(notBefore) : Optional.empty(),
                day));
        if (step.kind() == StepKind.UNCLAMP) {
            holds.add(new Hold(CLAMPS, Optional.ofNullable(indexes.get(glued.id())), index));
        }
    }

    private After wait(WorkStep before, WorkStep step, NeckFacts facts) {
        int index = index(before);
        return switch (step.kind()) {
            case FIT, GLUE -> new After(index, Duration.ZERO, Optional.empty(), true);
            case UNCLAMP -> After.cure(index, glue(facts).clamp());
            default -> After.endOf(index);
        };
    }

    private static Glue glue(NeckFacts facts) {
        return facts.glue().orElseThrow(() -> new IllegalStateException("A neck without a glue is not laid"));
    }

    private static WorkStep only(NeckFacts facts, StepKind kind) {
        return facts.steps().stream()
                .filter(s -> s.kind() == kind)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("A neck without a step to " + kind));
    }

    private static Instant later(Instant a, Optional<Instant> b) {
        return b.filter(i -> i.isAfter(a)).orElse(a);
    }

    private List<WorkStep> ofPlan(WorkStep step) {
        return byPlan.getOrDefault(step.neck().plan(), List.of());
    }

    private int index(WorkStep step) {
        Integer index = indexes.get(step.id());
        if (index == null) {
            throw new IllegalStateException(step.title() + " is not among the works yet");
        }
        return index;
    }

    private int machine(String code) {
        return machines.computeIfAbsent(code, k -> 1 + machines.size());
    }

    boolean isEmpty() {
        return works.isEmpty();
    }

    ScheduleProblem over(int days) {
        List<Hours> hours = calendar.hours(from, days);
        long inClamps = holds.stream().filter(h -> h.first().isEmpty()).count();
        List<Resource> resources = new ArrayList<>();
        // More in clamps than the shop has sets: somebody found another set. They are in use all the same.
        resources.add(new Resource("sets of clamps", (int) Math.max(workshop.clampSets(), inClamps)));
        machines.keySet().forEach(code -> resources.add(new Resource(code, 1)));
        return new ScheduleProblem(from, hours, resources, works, holds, goals);
    }

    /** The neck a work was added for. */
    Neck ownerOf(int work) {
        return owners.get(work);
    }

    /** Whether a work must be done on the first day because the faces are fresh, though nobody pinned it there. */
    boolean mustBeToday(int work) {
        return works.get(work).day().isPresent() && steps.get(work).pinned().isEmpty();
    }

    /** The step that a work is. */
    WorkStep step(int work) {
        return steps.get(work);
    }

    List<WorkStep> steps() {
        return List.copyOf(steps);
    }

    /** The neck of a goal. */
    NeckFacts neckOf(int goal) {
        return java.util.Objects.requireNonNull(necks.get(goalNecks.get(goal)));
    }

    /** Code of a machine. */
    String machineOf(int resource) {
        return machines.entrySet().stream()
                .filter(e -> e.getValue() == resource)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse("");
    }

    /** Steps that were done and are to be done once more. */
    Set<Long> again() {
        return Set.copyOf(again);
    }
}
