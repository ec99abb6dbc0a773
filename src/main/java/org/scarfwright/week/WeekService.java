package org.scarfwright.week;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.DayOff;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.week.LaidWeek.Day;
import org.scarfwright.week.LaidWeek.Held;
import org.scarfwright.week.LaidWeek.Laying;
import org.scarfwright.week.LaidWeek.Level;
import org.scarfwright.week.LaidWeek.Remark;
import org.scarfwright.week.LaidWeek.SetUp;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.WorkStep.Progress;
import org.scarfwright.week.WorkStep.Span;
import org.scarfwright.week.schedule.Alone;
import org.scarfwright.week.schedule.Schedule;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.ScheduleProblem;
import org.scarfwright.week.schedule.UnschedulableException;
import org.scarfwright.week.schedule.UnschedulableException.Reason;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** Lays the work. The search runs between two transactions and inside none. */
@Service
class WeekService implements WeekWork {
    /** As long as a person waits for the week. */
    static final Duration SHOWN_WITHIN = Duration.ofSeconds(2);

    /** As long as a better schedule is looked for once one is shown. */
    static final Duration LOOKED_FOR = Duration.ofSeconds(60);

    /** Days the search looks ahead; more only when there is no room in fewer. */
    private static final List<Integer> AHEAD = List.of(21, 42, 126);

    /** How long before a week a joint may have been glued that still cures in it: the longest cure there is. */
    private static final int LONGEST_CURE_DAYS = 31;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.ENGLISH);

    private final Floor floor;
    private final GivenUpWork givenUp;
    private final JdbcWork rows;
    private final WorkshopBook book;
    private final Designs designs;
    private final Searches searches;
    private final LongerSearch longer;
    private final TransactionTemplate transaction;
    private final Clock clock;

    WeekService(
            Floor floor,
            GivenUpWork givenUp,
            JdbcWork rows,
            WorkshopBook book,
            Designs designs,
            Searches searches,
            LongerSearch longer,
            TransactionTemplate transaction,
            Clock clock) {
        this.floor = floor;
        this.givenUp = givenUp;
        this.rows = rows;
        this.book = book;
        this.designs = designs;
        this.searches = searches;
        this.longer = longer;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** What is to be laid, as it was read. */
    private record Question(
            IsoWeek week,
            Instant from,
            WorkProblem.Shop shop,
            List<WorkStep> steps,
            List<NeckFacts> toLay,
            List<Remark> leftOut) {
        /** The same once its steps were written anew. */
        Question with(List<WorkStep> written) {
            return new Question(week, from, shop, written, toLay, leftOut);
        }
    }

    /** What the search found. */
    private record Answer(
            WorkProblem problem,
            @Nullable ScheduleProblem asked,
            @Nullable Schedule schedule,
            List<Remark> remarks,
            int milliseconds) {}

    @Override
    public LaidWeek lay(IsoWeek week) {
        longer.end();
        Question question = Objects.requireNonNull(transaction.execute(s -> read(week)));
        Searches.Chosen search = searches.choose();
        Answer answer = search(question, search, SHOWN_WITHIN, () -> false);
        Question kept = Objects.requireNonNull(transaction.execute(s -> {
            keep(question, answer, search);
            return question.with(stepsOf(question));
        }));
        Schedule shown = answer.schedule();
        if (shown != null && !shown.proved() && search.looksOn()) {
            longer.begin(ended -> lookOn(kept, shown, search, ended));
        }
        return Objects.requireNonNull(transaction.execute(s -> week(week)));
    }

    @Override
    public boolean looksOn() {
        return longer.isRunning();
    }

    /** Keeps a better schedule than the one shown, unless the work went on meanwhile or was laid anew. */
    private void lookOn(Question kept, Schedule shown, Searches.Chosen search, BooleanSupplier ended) {
        Answer answer = search(kept, search, LOOKED_FOR, ended);
        Schedule found = answer.schedule();
        if (found == null || ended.getAsBoolean()) {
            return;
        }
        transaction.executeWithoutResult(s -> {
            if (!stepsOf(kept).equals(kept.steps()) || ended.getAsBoolean()) {
                return;
            }
            int better = Schedule.BY_VALUES.compare(found, shown);
            if (better < 0) {
                keep(kept, answer, search);
            } else if (better == 0) {
                rows.keepBounds(levels(found));
            }
        });
    }

    private List<WorkStep> stepsOf(Question q) {
        return q.steps().stream()
                .map(WorkStep::neck)
                .map(Neck::plan)
                .distinct()
                .flatMap(id -> rows.ofPlan(id).stream())
                .toList();
    }

    private Question read(IsoWeek week) {
        List<Long> plans = floor.acceptedUpTo(week);
        for (long id : rows.unfinishedPlans()) {
            if (floor.isUndone(id)) {
                rows.deletePlan(id);
            }
        }
        Workshop workshop = floor.workshop();
        List<WorkStep> steps = new ArrayList<>();
        for (long id : plans) {
            if (!rows.hasSteps(id)) {
                floor.plan(id).ifPresent(plan -> PlanSteps.of(plan, workshop).forEach(rows::insert));
                givenUp.takeAll(id);
            }
            steps.addAll(rows.ofPlan(id));
        }
        Floor.Facts facts = floor.of(plans);
        ShopCalendar calendar = floor.calendar();
        List<NeckFacts> toLay = new ArrayList<>();
        List<Remark> leftOut = new ArrayList<>();
        byNeck(steps).forEach((neck, own) -> {
            if (facts.isGivenUp(neck) || own.stream().allMatch(WorkStep::isDone)) {
                return;
            }
            boolean glued = own.stream().anyMatch(s -> s.kind() == StepKind.GLUE && s.isDone());
            Optional<String> fault = facts.stands(neck, own).or(() -> glued ? Optional.empty() : facts.glueFault(neck));
            if (fault.isPresent()) {
                leftOut.add(remark(neck, Remark.Kind.LEFT_OUT, fault.get()));
            } else {
                toLay.add(facts.facts(neck, own, calendar));
            }
        });
        if (toLay.isEmpty() && leftOut.isEmpty()) {
            throw new InvalidInputException(new FieldError(
                    "/week",
                    "Week",
                    week.toString(),
                    week
                            + (steps.isEmpty()
                                    ? " has no accepted plan, nor has a week before it; match it and accept the plan first"
                                    : " has nothing left to do")));
        }
        Instant now = clock.instant();
        Instant first = toLay.stream()
                .map(NeckFacts::notBefore)
                .min(Comparator.naturalOrder())
                .orElse(now);
        return new Question(
                week,
                nextMinutes(first.isAfter(now) ? first : now),
                new WorkProblem.Shop(workshop, calendar),
                steps,
                toLay,
                leftOut);
    }

    /** The next five minutes on the clock. */
    private static Instant nextMinutes(Instant at) {
        Instant whole = at.truncatedTo(ChronoUnit.MINUTES);
        long over = whole.getEpochSecond() / 60 % 5;
        Instant down = whole.minus(over, ChronoUnit.MINUTES);
        return down.equals(at) ? at : down.plus(5, ChronoUnit.MINUTES);
    }

    /** Lays what can be laid: what finds no time is left out with its reason, and the rest tried again. */
    private Answer search(Question q, Searches.Chosen search, Duration limit, BooleanSupplier ended) {
        Map<Neck, NeckFacts> left = q.toLay().stream()
                .collect(Collectors.toMap(NeckFacts::neck, Function.identity(), (a, b) -> a, LinkedHashMap::new));
        List<Remark> remarks = new ArrayList<>(q.leftOut());
        Set<Neck> freshen = new HashSet<>();
        long begun = System.nanoTime();
        long deadline = begun + limit.toNanos();
        while (true) {
            WorkProblem problem = new WorkProblem(q.shop(), q.from(), List.copyOf(left.values()), q.steps(), freshen);
            if (problem.isEmpty()) {
                return new Answer(problem, null, null, remarks, 0);
            }
            for (int days : AHEAD) {
                ScheduleProblem asked = problem.over(days);
                try {
                    Schedule schedule = search.scheduler()
                            .lay(asked, Duration.ofNanos(Math.max(1, deadline - System.nanoTime())), ended);
                    remarks.addAll(late(problem, asked, schedule, q));
                    return new Answer(problem, asked, schedule, remarks, (int)
                            Duration.ofNanos(System.nanoTime() - begun).toMillis());
                } catch (UnschedulableException e) {
                    if (e.reason() == Reason.NO_TIME_LEFT && days != AHEAD.get(AHEAD.size() - 1)) {
                        continue;
                    }
                    Neck neck = problem.ownerOf(e.work());
                    if (problem.mustBeToday(e.work()) && freshen.add(neck)) {
                        break;
                    }
                    left.remove(neck);
                    remarks.add(remark(neck, Remark.Kind.LEFT_OUT, sentence(e, problem.step(e.work()), q)));
                    break;
                }
            }
        }
    }

    private static String sentence(UnschedulableException e, WorkStep step, Question q) {
        return switch (e.reason()) {
            case LONGER_THAN_A_DAY ->
                "“" + step.words()
                        + "” takes longer than any stretch of shop hours without a break. Open the shop longer, or"
                        + " give the step fewer minutes.";
            case NOTHING_TO_DO_IT_WITH ->
                "The shop has no set of clamps. Enter how many it has before anything is glued.";
            case NO_TIME_LEFT ->
                "“" + step.words() + "” finds no time"
                        + step.pinned()
                                .map(d -> " on " + DAY.format(d) + ", the day it is pinned to")
                                .orElse(" in the next " + AHEAD.get(AHEAD.size() - 1) + " days")
                        + step.pinned()
                                .filter(d -> q.shop().calendar().closed(d).isPresent())
                                .map(d -> ": the shop is closed")
                                .orElse("")
                        + ". "
                        + (step.pinned().isPresent()
                                ? "Take the pin off or choose another day."
                                : "Look at the shop's hours and its days off.");
        };
    }

    private List<Remark> late(WorkProblem problem, ScheduleProblem asked, Schedule schedule, Question q) {
        List<Remark> remarks = new ArrayList<>();
        List<Instant> alone = Alone.ends(asked);
        for (int g = 0; g < asked.goals().size(); g++) {
            ScheduleProblem.Goal goal = asked.goals().get(g);
            Instant end = schedule.placed().get(goal.work()).end();
            if (!end.isAfter(goal.due())) {
                continue;
            }
            NeckFacts facts = problem.neckOf(g);
            ShopCalendar calendar = q.shop().calendar();
            LocalDate dueDay = calendar.dayOf(goal.due()).minusDays(1);
            String sentence = "Ready on " + moment(end) + ", due on " + DAY.format(dueDay) + ". ";
            Instant soonest = alone.get(goal.work());
            if (soonest.isAfter(goal.due())) {
                sentence += goal.due().isBefore(q.from())
                        ? "Its due day is over."
                        : "Even with nothing else to do it would be ready on " + moment(soonest) + ": " + slowest(facts)
                                + ".";
            } else if (facts.steps().stream().anyMatch(s -> s.pinned().isPresent() && !s.isDone())) {
                sentence += "A step of it is pinned to a later day than it could be done on.";
            } else {
                long before = asked.goals().stream()
                                .filter(o -> !o.due().isAfter(goal.due()))
                                .count()
                        - 1;
                sentence += "The hours and clamps before its due day go to "
                        + (before == 1 ? "one other neck" : before + " other necks") + " due by then.";
            }
            remarks.add(remark(facts.neck(), Remark.Kind.LATE, sentence));
        }
        problem.again().stream()
                .map(id ->
                        q.steps().stream().filter(s -> s.id() == id).findFirst().orElseThrow())
                .map(WorkStep::neck)
                .distinct()
                .forEach(neck -> remarks.add(remark(
                        neck,
                        Remark.Kind.NOTE,
                        "Its bevel faces were trued and not glued the same day, so they are trued once more.")));
        return remarks;
    }

    private static String slowest(NeckFacts facts) {
        boolean glued = facts.steps().stream().anyMatch(s -> s.kind() == StepKind.GLUE && s.isDone());
        String cure = facts.glue()
                .map(g -> g.name() + " cures for " + g.cure().toHours() + " hours")
                .orElse("the glue has to cure");
        return glued ? "its joint is still curing" : cure + " after the joint is glued";
    }

    private String moment(Instant at) {
        return MOMENT.format(at.atZone(clock.getZone()));
    }

    private void keep(Question q, Answer answer, Searches.Chosen search) {
        List<WorkStep> now = stepsOf(q);
        if (!now.equals(q.steps())) {
            throw new ConflictException("Somebody worked on a step while the week was laid. Lay it again.");
        }
        now.stream().filter(s -> !s.isDone()).forEach(s -> rows.plan(s.id(), s.minutes(), null));
        for (WorkStep step : now) {
            if (answer.problem().again().contains(step.id())) {
                rows.progress(step, Progress.NONE);
            }
        }
        Schedule schedule = answer.schedule();
        List<Level> levels = new ArrayList<>();
        List<SetUp> setUps = new ArrayList<>();
        if (schedule != null && answer.asked() != null) {
            for (int w = 0; w < schedule.placed().size(); w++) {
                Schedule.Placed placed = schedule.placed().get(w);
                rows.plan(
                        answer.problem().step(w).id(),
                        answer.asked().works().get(w).minutes(),
                        new Span(placed.start(), placed.end()));
            }
            schedule.setUps()
                    .forEach(m -> setUps.add(new SetUp(
                            answer.problem().machineOf(m.resource()), m.name(), m.start(), m.ready(), m.end())));
            levels.addAll(levels(schedule));
        } else {
            for (Measure m : Measure.values()) {
                levels.add(new Level(name(m), 0, 0));
            }
        }
        rows.clearAfter(q.week());
        rows.keep(
                new Laying(
                        q.week(),
                        clock.instant().truncatedTo(ChronoUnit.SECONDS),
                        schedule == null ? "none" : schedule.engine(),
                        answer.milliseconds(),
                        search.note(),
                        levels),
                setUps,
                answer.remarks());
    }

    private static List<Level> levels(Schedule schedule) {
        return schedule.levels().stream()
                .map(l -> new Level(name(l.measure()), l.value(), l.bound()))
                .toList();
    }

    private static String name(Measure measure) {
        return switch (measure) {
            case LATE -> "late";
            case SET_UPS -> "setUps";
            case DAYS -> "days";
        };
    }

    private static Remark remark(Neck neck, Remark.Kind kind, String sentence) {
        return new Remark(neck.order(), neck.number(), kind, sentence);
    }

    private static Map<Neck, List<WorkStep>> byNeck(List<WorkStep> steps) {
        return steps.stream().collect(Collectors.groupingBy(WorkStep::neck, LinkedHashMap::new, Collectors.toList()));
    }

    @Override
    @Transactional(readOnly = true)
    public LaidWeek week(IsoWeek week) {
        ShopCalendar calendar = floor.calendar();
        LocalDate monday = week.monday();
        Instant begins = calendar.startOf(monday);
        Instant ends = calendar.startOf(monday.plusDays(7));
        // What was begun in this week may have been done in the next.
        Instant later = calendar.startOf(monday.plusDays(14));
        Instant earlier = calendar.startOf(monday.minusDays(LONGEST_CURE_DAYS));
        List<WorkStep> done = rows.doneBetween(begins, ends);
        List<WorkStep> planned = rows.plannedBetween(earlier, later);
        List<WorkStep> around = together(Stream.of(done, planned, rows.begunBefore(ends, later)));
        List<Held> held = held(together(Stream.of(done, planned, rows.clampedAt(begins, ends, earlier))).stream()
                .filter(s -> s.kind() == StepKind.GLUE || s.kind() == StepKind.UNCLAMP)
                .toList());
        List<SetUp> setUps = rows.setUps(begins, ends);
        List<Day> days = IntStream.range(0, 7)
                .mapToObj(monday::plusDays)
                .map(day -> day(day, calendar, around, setUps, held))
                .toList();
        List<Long> plans = floor.acceptedUpTo(week);
        List<Remark> remarks = rows.remarks();
        Set<String> leftOut = remarks.stream()
                .filter(r -> r.kind() == Remark.Kind.LEFT_OUT)
                .map(Remark::title)
                .collect(Collectors.toSet());
        Set<String> unlaid = new HashSet<>();
        Set<Neck> beyond = new HashSet<>();
        Floor.Facts facts = floor.of(plans);
        for (long id : plans) {
            List<WorkStep> steps = rows.ofPlan(id);
            if (steps.isEmpty()) {
                facts.necks(id).filter(neck -> !facts.isGivenUp(neck)).forEach(neck -> unlaid.add(neck.title()));
            }
            for (WorkStep step : steps) {
                if (facts.isGivenUp(step.neck())) {
                    continue;
                }
                if (!step.isDone() && step.planned().isEmpty()) {
                    unlaid.add(step.neck().title());
                }
                if (step.neck().week().equals(week.toString())
                        && step.planned().filter(p -> !p.end().isBefore(ends)).isPresent()
                        && !step.isDone()) {
                    beyond.add(step.neck());
                }
            }
        }
        unlaid.removeAll(leftOut);
        return new LaidWeek(
                week,
                rows.laying(),
                longer.isRunning(),
                days,
                remarks,
                unlaid.size(),
                beyond.stream()
                        .sorted(Comparator.comparing(Neck::order).thenComparing(Neck::number))
                        .toList());
    }

    private static List<WorkStep> together(Stream<List<WorkStep>> lists) {
        return lists.flatMap(List::stream).toList();
    }

    private static Day day(
            LocalDate day, ShopCalendar calendar, List<WorkStep> around, List<SetUp> setUps, List<Held> held) {
        Instant from = calendar.startOf(day);
        Instant to = calendar.startOf(day.plusDays(1));
        return new Day(
                day,
                calendar.closed(day),
                calendar.stretches(day),
                around.stream()
                        .filter(s -> at(s).filter(i -> !i.isBefore(from) && i.isBefore(to))
                                .isPresent())
                        .sorted(Comparator.comparing((WorkStep s) -> at(s).orElseThrow())
                                .thenComparing(WorkStep::id))
                        .toList(),
                setUps.stream()
                        .filter(s -> !s.start().isBefore(from) && s.start().isBefore(to))
                        .toList(),
                held.stream()
                        .filter(h -> h.from().isBefore(to) && h.opened().isAfter(from))
                        .toList());
    }

    private static Optional<Instant> at(WorkStep step) {
        return WeekTimes.of(step).map(Span::start);
    }

    private List<Held> held(List<WorkStep> steps) {
        Floor.Facts facts = floor.of(steps.stream().map(s -> s.neck().plan()).toList());
        List<Held> held = new ArrayList<>();
        byNeck(steps).forEach((neck, own) -> {
            if (facts.isGivenUp(neck)) {
                return;
            }
            Optional<WorkStep> glue =
                    own.stream().filter(s -> s.kind() == StepKind.GLUE).findFirst();
            glue.flatMap(g -> g.progress().doneAt().or(() -> g.planned().map(Span::end)))
                    .ifPresent(from -> {
                        WorkStep g = glue.orElseThrow();
                        Instant cured = g.progress()
                                .curedAt()
                                .orElseGet(() -> from.plus(
                                        facts.glue(neck).map(x -> x.cure()).orElse(Duration.ZERO)));
                        Instant opened = own.stream()
                                .filter(s -> s.kind() == StepKind.UNCLAMP)
                                .flatMap(s -> at(s).stream())
                                .findFirst()
                                .or(() -> g.progress().clampedUntil())
                                .or(() -> facts.glue(neck).map(x -> from.plus(x.clamp())))
                                .orElse(cured);
                        held.add(new Held(neck, from, opened, cured));
                    });
        });
        return held.stream()
                .sorted(Comparator.comparing(Held::from)
                        .thenComparing(h -> h.neck().title()))
                .toList();
    }

    @Override
    @Transactional
    public WorkStep pin(long id, LocalDate day) {
        WorkStep step = find(id);
        if (step.isDone()) {
            throw new ConflictException("“" + step.title() + "” is done already.");
        }
        ShopCalendar calendar = floor.calendar();
        Optional<String> closed = calendar.closed(day);
        if (closed.isPresent()) {
            boolean dayOff = book.daysOff().stream().map(DayOff::day).anyMatch(day::equals);
            throw wrongDay(
                    day,
                    "is no working day" + (dayOff ? " (" + closed.get() + ")" : "")
                            + "; choose a day the shop is open");
        }
        if (day.isBefore(LocalDate.now(clock))) {
            throw wrongDay(day, "is over; choose today or a later day");
        }
        rows.pin(id, day);
        return find(id);
    }

    private static InvalidInputException wrongDay(LocalDate day, String message) {
        return new InvalidInputException(new FieldError("/day", "Day", day.toString(), "“" + day + "” " + message));
    }

    @Override
    @Transactional
    public WorkStep unpin(long id) {
        find(id);
        rows.pin(id, null);
        return find(id);
    }

    private WorkStep find(long id) {
        return rows.find(id).orElseThrow(() -> new NotFoundException("There is no step " + id + "."));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> glueOf(String design) {
        return rows.glueOf(design);
    }

    @Override
    @Transactional
    public void chooseGlue(String design, Optional<String> glue) {
        if (designs.find(design).isEmpty()) {
            throw new InvalidInputException(
                    new FieldError("/design", "Design", design, "“" + design + "” is no design of the shop"));
        }
        if (glue.isPresent() && book.glue(glue.get()).isEmpty()) {
            throw new InvalidInputException(new FieldError(
                    "/glue",
                    "Glue",
                    glue.get(),
                    "“" + glue.get() + "” is no glue of the shop; choose one from its list"));
        }
        rows.chooseGlue(design, glue);
    }
}
