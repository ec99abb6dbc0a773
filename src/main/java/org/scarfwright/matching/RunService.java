package org.scarfwright.matching;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.NativeSolver;
import org.scarfwright.matching.search.SearchProgress;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchWatch;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.NotFoundException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Runs searches on a thread of its own, one after the other. The question is read before a search waits and the plan is saved
 * after it ended, each in a transaction of its own; the search reads no database.
 */
@Service
class RunService implements MatchRuns {
    /** More than a shop asks for; a program that asks without end is told so. */
    static final int MOST_OPEN = 20;

    private static final Logger log = LoggerFactory.getLogger(RunService.class);
    private static final Duration LONGEST_GOODBYE = Duration.ofSeconds(5);
    private static final String LOST =
            "The program ended before this search did. Nothing was reserved; match the week again.";

    private final PlanService plans;
    private final JdbcRuns rows;
    private final SearchSlot slot;
    private final TransactionTemplate transaction;
    private final Clock clock;
    private final ExecutorService searcher = Executors.newSingleThreadExecutor(r -> daemon(r, "match-search"));

    /** In the order they were asked for; the first one runs. Guarded by itself. */
    private final List<Live> line = new ArrayList<>();

    private volatile boolean closing;
    private volatile boolean warm;

    RunService(PlanService plans, JdbcRuns rows, SearchSlot slot, TransactionTemplate transaction, Clock clock) {
        this.plans = plans;
        this.rows = rows;
        this.slot = slot;
        this.transaction = transaction;
        this.clock = clock;
    }

    private static Thread daemon(Runnable work, String name) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        return thread;
    }

    /** A search that waits or runs. */
    private final class Live implements SearchWatch {
        private final long id;
        private final PlanService.Question question;
        /** Where near-equal plans are asked for and not the week's own. */
        private final PlanService.@Nullable Near near;

        private final CountDownLatch ended = new CountDownLatch(1);
        private volatile boolean stopped;
        private volatile @Nullable SearchProgress progress;
        private volatile @Nullable MemoryGuard memory;
        private volatile int found;

        Live(long id, PlanService.Question question, PlanService.@Nullable Near near) {
            this.id = id;
            this.question = question;
            this.near = near;
        }

        boolean asks(PlanService.Question same, PlanService.@Nullable Near sameNear) {
            return question.equals(same) && Objects.equals(near, sameNear);
        }

        @Override
        public boolean stopped() {
            MemoryGuard guard = memory;
            return stopped || closing || (guard != null && guard.exceeded());
        }

        @Override
        public void progress(SearchProgress now) {
            // What one of many searches for near-equal plans stands at says nothing of them all.
            progress = near == null ? now : null;
        }
    }

    @Override
    public MatchRun start(IsoWeek week, Plan.Asked asked) {
        return start(plans.question(week, asked), null);
    }

    @Override
    public MatchRun nearEqual(long plan, ExtraCost extra) {
        PlanService.NearQuestion asked = plans.nearQuestion(plan, extra);
        return start(asked.question(), asked.near());
    }

    private MatchRun start(PlanService.Question question, PlanService.@Nullable Near near) {
        synchronized (line) {
            Optional<Live> same =
                    line.stream().filter(l -> l.asks(question, near)).findFirst();
            if (same.isPresent() && !same.get().stopped()) {
                return found(same.get().id);
            }
            refuseTooMany();
            long id = Objects.requireNonNull(transaction.execute(s -> row(question, near)));
            return waiting(new Live(id, question, near));
        }
    }

    @Override
    public Locked lock(long plan, List<String> orders) {
        synchronized (line) {
            refuseTooMany();
            record Begun(
                    PlanService.Locking locking, @Nullable Live remainder) {}
            Begun begun;
            try {
                begun = Objects.requireNonNull(transaction.execute(s -> {
                    PlanService.Locking locking = plans.lock(plan, orders);
                    PlanService.Question remainder = locking.remainder();
                    return new Begun(
                            locking, remainder == null ? null : new Live(row(remainder, null), remainder, null));
                }));
            } catch (DuplicateKeyException e) {
                throw new ConflictException(PlanService.SAME_MOMENT, e);
            }
            Live remainder = begun.remainder();
            return new Locked(begun.locking().accepted(), remainder == null ? null : waiting(remainder));
        }
    }

    private void refuseTooMany() {
        if (line.size() >= MOST_OPEN) {
            throw new ConflictException(
                    line.size() + " searches wait or run already; wait for one to end, or stop some.");
        }
    }

    private long row(PlanService.Question question, PlanService.@Nullable Near near) {
        Plan.Origin origin = question.input().asked().origin();
        MatchRun.Kind kind = near != null
                ? MatchRun.Kind.NEAR_EQUAL
                : origin != null && origin.kind() == Plan.OriginKind.REMAINDER
                        ? MatchRun.Kind.REMAINDER
                        : MatchRun.Kind.MATCH;
        Long from = near != null
                ? Long.valueOf(near.origin().id())
                : kind == MatchRun.Kind.REMAINDER && origin != null ? Long.valueOf(origin.plan()) : null;
        return rows.insert(question.input().week(), kind, from, clock.instant());
    }

    /** Puts a search whose row is written into the line. */
    private MatchRun waiting(Live live) {
        line.add(live);
        searcher.execute(() -> work(live));
        return found(live.id);
    }

    @Override
    public Optional<MatchRun> lastNear(long plan) {
        return rows.lastNear(plan).flatMap(run -> find(run.id()));
    }

    @Override
    public Optional<MatchRun> find(long id) {
        // The line first: a search leaves it only after its row is written, so that none is ever seen without its end.
        int ahead;
        @Nullable Live live;
        synchronized (line) {
            live = line.stream().filter(l -> l.id == id).findFirst().orElse(null);
            ahead = live == null ? 0 : line.indexOf(live);
        }
        Optional<MatchRun> row = rows.find(id);
        if (live == null) {
            return row;
        }
        SearchProgress progress = live.progress;
        MatchInput input = live.question.input();
        return row.map(r -> new MatchRun(
                r.id(),
                r.week(),
                r.kind(),
                r.origin(),
                r.state(),
                r.askedAt(),
                r.startedAt(),
                r.endedAt(),
                r.plan(),
                r.message(),
                r.state() == MatchRun.State.WAITING ? ahead : 0,
                progress == null || !r.open() ? null : told(progress, input),
                r.open() ? live.found : 0));
    }

    private MatchRun.Progress told(SearchProgress p, MatchInput input) {
        long value = p.best().getOrDefault(Measure.BOOK_VALUE, 0L);
        Long bound = p.bounds().get(Measure.BOOK_VALUE);
        int proved = 0;
        for (Map.Entry<Measure, Long> b : p.bounds().entrySet()) {
            if (b.getKey().compareTo(p.level()) <= 0
                    && b.getValue().equals(p.best().get(b.getKey()))) {
                proved++;
            }
        }
        return new MatchRun.Progress(
                PlanMaker.name(p.level(), input),
                p.necks(),
                input.necks(),
                BigDecimal.valueOf(value, 2),
                bound == null ? null : BigDecimal.valueOf(bound, 2),
                bound == null || value <= 0 ? null : percent(value - bound, value),
                proved,
                p.seconds(),
                input.settings().searchSeconds());
    }

    /** Rounded up: what can still be saved is never told too small. */
    private static BigDecimal percent(long part, long whole) {
        return BigDecimal.valueOf(part)
                .multiply(BigDecimal.valueOf(100))
                .divide(BigDecimal.valueOf(whole), 2, RoundingMode.CEILING);
    }

    private MatchRun found(long id) {
        return find(id).orElseThrow(() -> new NotFoundException("There is no search " + id + "."));
    }

    @Override
    public List<MatchRun> open(IsoWeek week) {
        List<Long> ids;
        synchronized (line) {
            ids = line.stream()
                    .filter(l -> l.question.input().week().equals(week))
                    .map(l -> l.id)
                    .toList();
        }
        return ids.stream()
                .flatMap(id -> find(id).stream())
                .filter(MatchRun::open)
                .toList();
    }

    @Override
    public MatchRun stop(long id) {
        MatchRun run = found(id);
        synchronized (line) {
            line.stream().filter(l -> l.id == id).forEach(l -> l.stopped = true);
        }
        return run.open() ? found(id) : run;
    }

    @Override
    public MatchRun await(long id, Duration patience) {
        @Nullable Live live;
        synchronized (line) {
            live = line.stream().filter(l -> l.id == id).findFirst().orElse(null);
        }
        if (live != null) {
            try {
                // Time over or not, the row tells.
                boolean ended = live.ended.await(patience.toMillis(), TimeUnit.MILLISECONDS);
                log.debug("Search {} has {}ended", id, ended ? "" : "not ");
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        return found(id);
    }

    @Override
    public void warmUp() {
        if (!warm) {
            warm = true;
            daemon(NativeSolver::usable, "match-warm-up").start();
        }
    }

    // ---- on the searching thread -----------------------------------------------------------------------------------

    private void work(Live live) {
        slot.take();
        try {
            JdbcRuns.End end = live.stopped() ? nothing(live.near != null) : searched(live);
            if (end.state() != MatchRun.State.DONE) {
                ended(live, end);
            }
        } catch (RuntimeException e) {
            // The rows could not be written; they are marked as lost by the next start.
            log.error("Search {} ended and could not be written down", live.id, e);
        } finally {
            slot.leave();
            synchronized (line) {
                line.remove(live);
            }
            live.ended.countDown();
        }
    }

    private JdbcRuns.End searched(Live live) {
        try {
            Instant now = clock.instant();
            transaction.executeWithoutResult(s -> rows.started(live.id, now));
            live.memory = live.question.memory();
            if (live.near != null) {
                return near(live, live.near);
            }
            Plan plan = plans.searched(live.question, live);
            if (closing || (live.stopped && plan.filled() == 0)) {
                return nothing(false);
            }
            return Objects.requireNonNull(transaction.execute(s -> {
                long id = plans.keep(plan, live.question).id();
                JdbcRuns.End done = new JdbcRuns.End(MatchRun.State.DONE, id, why(live));
                rows.ended(live.id, done, clock.instant());
                return done;
            }));
        } catch (ConflictException e) {
            return new JdbcRuns.End(MatchRun.State.FAILED, null, e.getMessage());
        } catch (RuntimeException | VirtualMachineError e) {
            log.error("Search {} failed", live.id, e);
            return new JdbcRuns.End(
                    MatchRun.State.FAILED,
                    null,
                    (e instanceof OutOfMemoryError
                                    ? "The search ran out of memory."
                                    : "The search failed; the program's log says where.")
                            + " Nothing was reserved.");
        }
    }

    private JdbcRuns.End near(Live live, PlanService.Near near) {
        NearEquals.Answer answer = plans.near(
                near, live.question, new NearEquals.Watching(live, n -> live.found = n, live.question.limit()));
        if (closing || (live.stopped && answer.plans().isEmpty())) {
            return nothing(true);
        }
        return Objects.requireNonNull(transaction.execute(s -> {
            plans.keepNear(near.origin(), answer.plans(), live.question);
            String stopped = why(live);
            JdbcRuns.End done = new JdbcRuns.End(
                    MatchRun.State.DONE,
                    near.origin().id(),
                    told(answer, live.question) + (stopped == null ? "" : " " + stopped));
            rows.ended(live.id, done, clock.instant());
            return done;
        }));
    }

    private static String told(NearEquals.Answer answer, PlanService.Question question) {
        if (!answer.plans().isEmpty()) {
            return answer.plans().size() == 1
                    ? "One other plan fills as much within that cost."
                    : answer.plans().size() + " other plans fill as much within that cost.";
        }
        BigDecimal beyond = answer.leastBeyond();
        return "No other plan that fills as much was found within that cost."
                + (beyond == null
                        ? ""
                        : " The cheapest other one that was met spends " + beyond.toPlainString() + " "
                                + question.input().settings().currency() + ".");
    }

    private static @Nullable String why(Live live) {
        if (live.stopped) {
            return "Stopped by hand; the best so far was kept.";
        }
        MemoryGuard guard = live.memory;
        return guard != null && guard.exceeded()
                ? "Stopped at the shop's limit of memory for a search; the best so far was kept."
                : null;
    }

    private JdbcRuns.End nothing(boolean near) {
        return closing
                ? new JdbcRuns.End(MatchRun.State.LOST, null, LOST)
                : new JdbcRuns.End(
                        MatchRun.State.STOPPED,
                        null,
                        near
                                ? "Stopped before another plan was found; there was nothing to keep."
                                : "Stopped before any neck had its wood; there was nothing to keep.");
    }

    private void ended(Live live, JdbcRuns.End end) {
        Instant now = clock.instant();
        transaction.executeWithoutResult(s -> rows.ended(live.id, end, now));
    }

    // ---- with the program ------------------------------------------------------------------------------------------

    @EventListener(ApplicationReadyEvent.class)
    void loseWhatTheLastProgramLeft() {
        Instant now = clock.instant();
        Integer lost = transaction.execute(s -> rows.lose(LOST, now));
        if (lost != null && lost > 0) {
            log.warn("{} searches were lost when the program ended; they reserved nothing", lost);
        }
    }

    /** Before the database closes: the search is asked to stop, and what is told of it is written. */
    @EventListener(ContextClosedEvent.class)
    void endWithTheProgram() {
        closing = true;
        searcher.shutdown();
        try {
            if (!searcher.awaitTermination(LONGEST_GOODBYE.toMillis(), TimeUnit.MILLISECONDS)) {
                log.warn("A search did not stop in time; it is marked as lost by the next start");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
