package org.scarfwright.week;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.StepKind;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.WorkStep.Progress;
import org.scarfwright.week.WorkStep.Span;
import org.scarfwright.week.WorkStep.State;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Works on steps. Each act is one transaction and names the version of the step it saw. */
@Service
class BenchService implements Bench {
    private static final int LONGEST_WORDS = 300;
    private static final int LONGEST_NAME = 80;

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    private final Floor floor;
    private final JdbcWork rows;
    private final Clock clock;

    BenchService(Floor floor, JdbcWork rows, Clock clock) {
        this.floor = floor;
        this.rows = rows;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Card> day(LocalDate day) {
        ShopCalendar calendar = floor.calendar();
        Instant from = calendar.startOf(day);
        List<WorkStep> steps = Stream.concat(
                        rows.undoneBefore(from).stream(),
                        rows.between(from, calendar.startOf(day.plusDays(1))).stream())
                .sorted(Comparator.comparing(
                                (WorkStep s) -> WeekTimes.of(s).map(Span::start).orElse(from))
                        .thenComparing(WorkStep::id))
                .toList();
        Floor.Facts facts = floor.of(steps.stream().map(s -> s.neck().plan()).toList());
        Map<Long, List<WorkStep>> ofPlan =
                steps.stream().map(s -> s.neck().plan()).distinct().collect(Collectors.toMap(id -> id, rows::ofPlan));
        return steps.stream()
                .map(s -> card(s, facts, ofPlan.getOrDefault(s.neck().plan(), List.of())))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<LocalDate> next(LocalDate day) {
        ShopCalendar calendar = floor.calendar();
        return rows.firstUndoneFrom(calendar.startOf(day.plusDays(1))).map(calendar::dayOf);
    }

    @Override
    @Transactional(readOnly = true)
    public Card card(long id) {
        return card(find(id));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Curing> curing() {
        Map<Long, List<WorkStep>> ofPlan =
                rows.unfinishedPlans().stream().collect(Collectors.toMap(id -> id, rows::ofPlan));
        Floor.Facts facts = floor.of(ofPlan.keySet());
        return ofPlan.values().stream()
                .flatMap(steps -> glued(steps)
                        .filter(g -> !facts.isGivenUp(g.neck()))
                        .map(g -> new Curing(
                                g,
                                g.progress().clampedUntil().orElseThrow(),
                                g.progress().curedAt().orElseThrow(),
                                StepOrder.after(g, steps).stream().allMatch(WorkStep::isDone))))
                .sorted(Comparator.comparing((Curing c) -> c.opened() ? c.curedAt() : c.clampedUntil())
                        .thenComparing(c -> c.glued().id()))
                .toList();
    }

    /** Joints whose clamps are not off or that are not squared up, of a plan's steps. */
    private static Stream<WorkStep> glued(List<WorkStep> ofPlan) {
        Set<Neck> going = ofPlan.stream()
                .filter(s -> s.kind() == StepKind.SQUARE_UP && !s.isDone())
                .map(WorkStep::neck)
                .collect(Collectors.toSet());
        return ofPlan.stream().filter(s -> s.kind() == StepKind.GLUE && s.isDone() && going.contains(s.neck()));
    }

    @Override
    @Transactional
    public Card start(long id, String who) {
        WorkStep step = find(id);
        if (step.isDone() || step.progress().state() == State.STARTED) {
            return card(step);
        }
        refuseUnlessReady(step);
        return write(step, progress(State.STARTED, Optional.of(now()), Optional.empty(), who(who)));
    }

    @Override
    @Transactional
    public Card done(long id, OptionalInt minutes, String who) {
        if (minutes.isPresent() && (minutes.getAsInt() < 0 || minutes.getAsInt() > LONGEST)) {
            throw new InvalidInputException(new FieldError(
                    "/minutes",
                    "Minutes",
                    Integer.toString(minutes.getAsInt()),
                    "“" + minutes.getAsInt() + "” is not between 0 and " + LONGEST));
        }
        WorkStep step = find(id);
        if (step.isDone()) {
            return card(step);
        }
        refuseUnlessReady(step);
        Instant now = now();
        Progress plain = progress(
                State.DONE, step.progress().startedAt().or(() -> Optional.of(now)), Optional.of(now), who(who));
        Optional<Glue> glue = step.kind() == StepKind.GLUE
                ? floor.of(List.of(step.neck().plan())).glue(step.neck())
                : Optional.empty();
        return write(
                step,
                new Progress(
                        State.DONE,
                        plain.startedAt(),
                        plain.doneAt(),
                        plain.who(),
                        minutes,
                        glue.map(g -> now.plus(g.clamp())),
                        glue.map(g -> now.plus(g.cure())),
                        Optional.empty()));
    }

    @Override
    @Transactional
    public Card somethingElse(long id, String reason, String who) {
        String words = reason.strip();
        if (words.isEmpty() || words.length() > LONGEST_WORDS) {
            throw new InvalidInputException(new FieldError(
                    "/reason",
                    "What happened",
                    words,
                    words.isEmpty()
                            ? "is empty; write in a few words what happened"
                            : "is " + words.length() + " characters long; write at most " + LONGEST_WORDS));
        }
        WorkStep step = find(id);
        if (step.isDone()) {
            throw new ConflictException("“" + step.title() + "” is done already. Take it back first.");
        }
        return write(
                step,
                new Progress(
                        State.STOPPED,
                        step.progress().startedAt(),
                        Optional.empty(),
                        who(who),
                        OptionalInt.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(words)));
    }

    @Override
    @Transactional
    public Card goOn(long id) {
        WorkStep step = find(id);
        return step.progress().state() == State.STOPPED ? write(step, Progress.NONE) : card(step);
    }

    @Override
    @Transactional
    public Card takeBack(long id) {
        WorkStep step = find(id);
        Optional<WorkStep> begun = StepOrder.after(step, rows.ofPlan(step.neck().plan())).stream()
                .filter(s -> s.progress().state() == State.STARTED || s.isDone())
                .findFirst();
        if (begun.isPresent()) {
            throw new ConflictException("“" + begun.get().title() + "” was begun after it. Take that back first.");
        }
        boolean nothing =
                step.progress().state() == State.OPEN || step.progress().state() == State.STOPPED;
        return nothing ? card(step) : write(step, Progress.NONE);
    }

    private void refuseUnlessReady(WorkStep step) {
        waitsFor(step, floor.of(List.of(step.neck().plan())), ofPlan(step)).ifPresent(sentence -> {
            throw new ConflictException(sentence);
        });
    }

    private List<WorkStep> ofPlan(WorkStep step) {
        return rows.ofPlan(step.neck().plan());
    }

    /** @param ofPlan all steps of the step's plan */
    private Optional<String> waitsFor(WorkStep step, Floor.Facts facts, List<WorkStep> ofPlan) {
        if (step.isDone()) {
            return Optional.empty();
        }
        List<WorkStep> ofNeck =
                ofPlan.stream().filter(s -> s.neck().equals(step.neck())).toList();
        return facts.stands(step.neck(), ofNeck)
                .or(() -> StepOrder.before(step, ofPlan).stream()
                        .filter(s -> !s.isDone())
                        .findFirst()
                        .map(s -> "It waits for “" + s.title() + "”. Do that first."))
                .or(() -> step.kind() == StepKind.GLUE
                        ? faces(ofNeck).or(() -> facts.glueFault(step.neck()))
                        : Optional.empty())
                .or(() -> clocks(step, ofNeck));
    }

    /** A face trued on another day is dusty, oxidised or out of true by now: common practice. */
    private Optional<String> faces(List<WorkStep> ofNeck) {
        LocalDate today = LocalDate.now(clock);
        return ofNeck.stream()
                .filter(s -> s.kind() == StepKind.TRUE)
                .flatMap(s -> s.progress().doneAt().stream())
                .map(at -> at.atZone(clock.getZone()).toLocalDate())
                .filter(day -> day.isBefore(today))
                .findFirst()
                .map(day -> "Its bevel faces were trued on " + DAY.format(day)
                        + ". Take fit and true back, true them again and glue the same day.");
    }

    private Optional<String> clocks(WorkStep step, List<WorkStep> ofNeck) {
        Optional<Progress> glued = ofNeck.stream()
                .filter(s -> s.kind() == StepKind.GLUE)
                .map(WorkStep::progress)
                .findFirst();
        return switch (step.kind()) {
            case UNCLAMP ->
                glued.flatMap(Progress::clampedUntil)
                        .filter(at -> at.isAfter(clock.instant()))
                        .map(at -> "The joint stays in clamps until " + moment(at) + ".");
            case SQUARE_UP ->
                glued.flatMap(Progress::curedAt)
                        .filter(at -> at.isAfter(clock.instant()))
                        .map(at -> "The glue cures until " + moment(at) + "; the joint is not worked before.");
            default -> Optional.empty();
        };
    }

    private Card write(WorkStep seen, Progress progress) {
        if (!rows.progress(seen, progress)) {
            throw new ConflictException(
                    "Somebody else worked on “" + seen.title() + "” at the same moment. Look at it again.");
        }
        return card(find(seen.id()));
    }

    private Card card(WorkStep step) {
        return card(step, floor.of(List.of(step.neck().plan())), ofPlan(step));
    }

    private Card card(WorkStep step, Floor.Facts facts, List<WorkStep> ofPlan) {
        return new Card(
                step,
                waitsFor(step, facts, ofPlan),
                facts.glue(step.neck()),
                facts.design(step.neck()).orElse(""));
    }

    private static Progress progress(
            State state, Optional<Instant> startedAt, Optional<Instant> doneAt, Optional<String> who) {
        return new Progress(
                state,
                startedAt,
                doneAt,
                who,
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Optional<String> who(String typed) {
        String name = typed.strip();
        return name.isEmpty()
                ? Optional.empty()
                : Optional.of(name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS);
    }

    private String moment(Instant at) {
        return MOMENT.format(at.atZone(clock.getZone()));
    }

    private WorkStep find(long id) {
        return rows.find(id).orElseThrow(() -> new NotFoundException("There is no step " + id + "."));
    }
}
