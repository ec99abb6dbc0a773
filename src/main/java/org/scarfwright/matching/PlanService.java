package org.scarfwright.matching;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.SearchWatch;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceHistory;
import org.scarfwright.rack.PieceNotFreeException;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.Rack.PieceStamp;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.wood.SpeciesCatalog;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/** Makes, keeps, accepts and undoes plans. The search runs between two transactions and inside none. */
@Service
class PlanService implements Plans {
    private static final Logger log = LoggerFactory.getLogger(PlanService.class);

    static final String SAME_MOMENT =
            "Another plan with one of these necks was accepted at the same moment; match the week again.";

    /** A person mends these before reading on. */
    private static final int MOST_ERRORS = 20;

    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("d MMM uuuu 'at' HH:mm", Locale.ENGLISH);

    private final Rooms rooms;
    private final Orders orders;
    private final Designs designs;
    private final Rack rack;
    private final ApplicationEventPublisher events;
    private final Shop shop;
    private final JdbcPlans plans;
    private final JdbcHands hands;
    private final PlanCheck check;
    private final PlanMaker maker;
    private final TransactionTemplate transaction;
    private final Clock clock;
    private final Duration patience;
    private final SearchSlot slot;

    /**
     * What a plan needs to know, gathered so that the constructor stays readable.
     *
     * @param history asked for late: the ledger knows the rack, and the rack asks here what a piece is used for
     * @param events told when a plan makes a neck no longer
     */
    record Rooms(
            Orders orders,
            Designs designs,
            Rack rack,
            Shop shop,
            SpeciesCatalog woods,
            Supplier<PieceHistory> history,
            ApplicationEventPublisher events) {}

    PlanService(
            Rooms rooms,
            JdbcPlans plans,
            JdbcHands hands,
            PlanCheck check,
            MatchSearch search,
            TransactionTemplate transaction,
            Clock clock,
            SearchSlot slot,
            @Value("${scarfwright.match.patience}") Duration patience) {
        this.rooms = rooms;
        this.orders = rooms.orders();
        this.designs = rooms.designs();
        this.rack = rooms.rack();
        this.events = rooms.events();
        this.shop = rooms.shop();
        this.plans = plans;
        this.hands = hands;
        this.check = check;
        this.maker = new PlanMaker(search);
        this.transaction = transaction;
        this.clock = clock;
        this.patience = patience;
        this.slot = slot;
    }

    @Override
    public Plan make(IsoWeek week, Plan.Asked asked) {
        Question question = question(week, asked);
        if (!slot.takeWithin(patience)) {
            throw new ConflictException("Another match is still running; try again when it has ended.");
        }
        try {
            return keep(searched(question, question.memory()::exceeded), question);
        } finally {
            slot.leave();
        }
    }

    /** What the week asks for and what is there for it, read in a transaction of its own. */
    Question question(IsoWeek week, Plan.Asked asked) {
        return required(transaction.execute(s -> read(week, asked, handsOf(week))));
    }

    /** The same with other decisions than those that are noted. */
    Question question(IsoWeek week, Plan.Asked asked, List<Hand> hands) {
        return required(transaction.execute(s -> read(week, asked, hands)));
    }

    private List<Hand> handsOf(IsoWeek week) {
        return hands.of(week).stream().map(Hands.Kept::hand).toList();
    }

    /**
     * A plan that passed its check and is not kept yet. Reads no database.
     *
     * @throws ConflictException when the plan did not pass
     */
    Plan searched(Question question, SearchWatch watch) {
        return checked(maker.make(question.input(), clock.instant(), question.limit(), watch), question.facts());
    }

    /**
     * Near-equal plans that passed their check and are not kept yet. Reads no database.
     *
     * @throws ConflictException when one of them did not pass
     */
    NearEquals.Answer near(Near near, Question question, NearEquals.Watching watching) {
        NearEquals.Answer answer = new NearEquals(maker, question.input(), near.origin(), near.dearest(), watching)
                .search(clock.instant());
        answer.plans().forEach(plan -> checked(plan, question.facts()));
        return answer;
    }

    private Plan checked(Plan plan, PlanCheck.Facts facts) {
        List<String> faults = check.faults(plan, facts);
        if (!faults.isEmpty()) {
            log.error("The plan for {} did not pass its check: {}", plan.week(), faults);
            throw new ConflictException("The plan that was found did not pass its check, and nothing was saved: "
                    + String.join(" ", faults));
        }
        return plan;
    }

    Plan keep(Plan plan, Question question) {
        return required(transaction.execute(s -> plans.insert(plan, versions(plan, question.input()))));
    }

    private static Map<String, Long> versions(Plan plan, MatchInput input) {
        Map<String, Long> versions = new TreeMap<>();
        for (Plan.Pairing pairing : plan.pairings()) {
            NeckDesign design = input.line(pairing.order()).orElseThrow().design();
            versions.put(design.code(), design.version());
        }
        return versions;
    }

    /**
     * What near-equal plans are asked for.
     *
     * @param dearest the most book value one may spend, in the shop's currency
     */
    record Near(Plan origin, BigDecimal dearest) {}

    /** A week's question, and the plan whose near-equal ones are asked for. */
    record NearQuestion(Near near, Question question) {}

    /** Refuses a plan that is not an answer to what the shop asks now. */
    NearQuestion nearQuestion(long id, ExtraCost extra) {
        return required(transaction.execute(s -> {
            Plan plan = plans.find(id).orElseThrow(() -> unknown(id));
            if (plan.state() == Plan.State.ACCEPTED) {
                throw new ConflictException("Plan " + id + " is accepted already; undo it to look for others.");
            }
            BigDecimal spent = plan.bookValue().orElse(null);
            if (plan.pairings().isEmpty() || spent == null) {
                throw new ConflictException(
                        "Plan " + id
                                + (plan.pairings().isEmpty()
                                        ? " makes no neck; there is nothing to differ from."
                                        : " holds the locked orders of another plan and was not searched for by itself; look from that one."));
            }
            refuseStale(plan);
            IsoWeek week = IsoWeek.parse(plan.week());
            Question question = read(week, plan.asked(), handsOf(week));
            if (question.input().necks() != plan.ordered()) {
                throw new ConflictException("The orders of " + week + " ask for "
                        + question.input().necks() + " necks now, and plan " + id + " was made for "
                        + plan.ordered() + "; match the week again.");
            }
            return new NearQuestion(new Near(plan, spent.add(extra.of(spent))), question);
        }));
    }

    private void refuseStale(Plan plan) {
        refuseElsewhere(plan);
        List<String> changes = changes(plan, plans.designs(plan.id()));
        changes.addAll(rack.refusals(stamps(plan)));
        if (!plan.hands()
                .equals(handsOf(IsoWeek.parse(plan.week())).stream()
                        .map(Hand::words)
                        .toList())) {
            changes.add("What was decided by hand changed since.");
        }
        if (!changes.isEmpty()) {
            throw new ConflictException(
                    String.join(" ", changes) + lastActs(plan, plan.madeAt()) + " Match the week again first.");
        }
    }

    private static List<PieceStamp> stamps(Plan plan) {
        return plan.layouts().stream()
                .map(l -> new PieceStamp(l.piece(), l.pieceVersion()))
                .toList();
    }

    /** Keeps those that are not kept yet. */
    int keepNear(Plan origin, List<Plan> found, Question question) {
        List<Plan> kept = plans.nearTo(origin.id());
        found.stream()
                .filter(plan ->
                        kept.stream().noneMatch(k -> PlanComparison.of(k, plan).differing() == 0))
                .forEach(plan -> keep(plan, question));
        return found.size();
    }

    /** A week's question, and the same facts for the check. */
    record Question(MatchInput input, PlanCheck.Facts facts) {
        /** How long a search for it may take. */
        Duration limit() {
            return Duration.ofSeconds(input.settings().searchSeconds());
        }

        /** What a search that begins now may take. */
        MemoryGuard memory() {
            return new MemoryGuard(input.settings().searchMemoryMb());
        }
    }

    private Question read(IsoWeek week, Plan.Asked asked, List<Hand> decided) {
        List<NeckOrder> ofWeek = orders.inWeek(week);
        if (ofWeek.isEmpty()) {
            throw refused(week, "has no orders; enter one for it, or choose a week that has some");
        }
        List<NeckDesign> all = designs.all();
        Map<String, NeckDesign> byCode = all.stream().collect(Collectors.toMap(NeckDesign::code, Function.identity()));
        ByHand byHand = new ByHand(decided);
        List<NeckOrder> wanted = wanted(week, asked, ofWeek, byHand);
        List<Plan> accepted = plans.ofWeek(week).stream()
                .filter(p -> p.state() == Plan.State.ACCEPTED)
                .toList();
        List<MatchInput.Line> lines = new ArrayList<>();
        List<NeckOrder> open = new ArrayList<>();
        for (NeckOrder order : wanted) {
            NeckDesign design = byCode.get(order.designCode());
            if (design == null) {
                throw new ConflictException("Order " + order.code() + " asks for design " + order.designCode()
                        + ", which is not on file. Enter the design or change the order.");
            }
            Set<Integer> made = plans.accepted(order.code());
            List<Integer> numbers = IntStream.rangeClosed(1, order.quantity())
                    .filter(n -> !made.contains(n))
                    .boxed()
                    .toList();
            if (!numbers.isEmpty() && !byHand.leftOut(order.code())) {
                NeckDesign arranged = byHand.arranged(order.code(), design);
                lines.addAll(lines(order, arranged, numbers, openPins(byHand.pins(order.code()), accepted)));
                open.add(remaining(order, numbers.size()));
            }
        }
        if (lines.isEmpty()) {
            throw refused(
                    week,
                    decided.stream().anyMatch(Hand.LeaveOut.class::isInstance)
                            ? "has nothing left to match: its other orders are left out by hand or in an accepted plan"
                            : "has every neck in an accepted plan already; undo that plan to match the week again");
        }
        LocalDate day = workDay(week);
        MatchInput input = new MatchInput(
                week, asked, lines, all, rack.free(), shop.settings(), shop.saws(), day, decided, reserved(), woods());
        return new Question(
                input,
                new PlanCheck.Facts(input.pieces(), all, open, input.settings(), input.saws(), day, open(input)));
    }

    /** The orders to match; every one that is named has a neck to match. */
    private List<NeckOrder> wanted(IsoWeek week, Plan.Asked asked, List<NeckOrder> ofWeek, ByHand byHand) {
        if (asked.orders().isEmpty()) {
            return ofWeek;
        }
        Map<String, NeckOrder> byCode = ofWeek.stream().collect(Collectors.toMap(NeckOrder::code, Function.identity()));
        List<FieldError> errors = new ArrayList<>();
        for (String code : new TreeSet<>(asked.orders())) {
            NeckOrder order = byCode.get(code);
            String wrong = null;
            if (order == null) {
                wrong = "is no order of week " + week + "; name one that is";
            } else if (byHand.leftOut(code)) {
                wrong = "is left out by hand; take that back first";
            } else if (plans.accepted(code).size() >= order.quantity()) {
                wrong = "has every neck in an accepted plan; leave it out, or undo that plan";
            }
            if (wrong != null) {
                errors.add(new FieldError("/orders", "Order", code, "“" + code + "” " + wrong));
            }
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors.subList(0, Math.min(errors.size(), MOST_ERRORS)));
        }
        return ofWeek.stream().filter(o -> asked.orders().contains(o.code())).toList();
    }

    /** The necks of one order: each pinned one is a line of its own. */
    private static List<MatchInput.Line> lines(
            NeckOrder order, NeckDesign design, List<Integer> numbers, List<Hand.Pin> pins) {
        int pinned = Math.min(pins.size(), numbers.size());
        List<MatchInput.Line> lines = new ArrayList<>();
        for (int i = 0; i < pinned; i++) {
            lines.add(
                    new MatchInput.Line(order.code(), design, List.of(numbers.get(i)), order.priority(), pins.get(i)));
        }
        if (pinned < numbers.size()) {
            lines.add(new MatchInput.Line(
                    order.code(), design, numbers.subList(pinned, numbers.size()), order.priority()));
        }
        return lines;
    }

    private static List<Hand> open(MatchInput input) {
        return Stream.concat(
                        input.hands().stream().filter(h -> !(h instanceof Hand.Pin)),
                        input.lines().stream().flatMap(l -> Stream.ofNullable(l.pin())))
                .toList();
    }

    /** Pins no accepted plan has made true yet. */
    private List<Hand.Pin> openPins(List<Hand.Pin> pins, List<Plan> accepted) {
        List<Hand.Pin> made = new ArrayList<>();
        accepted.forEach(plan -> plans.held(plan)
                .forEach(p -> made.add(
                        new Hand.Pin(p.order(), p.neck().piece(), p.head().piece()))));
        return pins.stream().filter(pin -> !made.remove(pin)).toList();
    }

    private List<MatchInput.Reserved> reserved() {
        List<JdbcPlans.Holding> holdings = plans.holdings();
        Map<String, JdbcPlans.Holding> byPiece = new TreeMap<>();
        holdings.forEach(h -> byPiece.put(h.piece(), h));
        return rack.findAll(byPiece.keySet()).stream()
                .filter(p -> p.state() == PieceState.RESERVED)
                .map(p -> new MatchInput.Reserved(
                        p,
                        "reserved for "
                                + Objects.requireNonNull(byPiece.get(p.code())).words()))
                .toList();
    }

    private static InvalidInputException refused(IsoWeek week, String message) {
        return new InvalidInputException(new FieldError("/week", "Week", week.toString(), week + " " + message));
    }

    private static NeckOrder remaining(NeckOrder o, int quantity) {
        return new NeckOrder(
                o.id(),
                o.version(),
                o.code(),
                o.designCode(),
                quantity,
                o.due(),
                o.priority(),
                o.week(),
                o.customerNote());
    }

    private static <T> T required(@Nullable T value) {
        return Objects.requireNonNull(value);
    }

    @Override
    public Optional<Plan> find(long id) {
        return plans.find(id);
    }

    @Override
    public Optional<Plan> latest(IsoWeek week) {
        return plans.latest(week);
    }

    @Override
    public List<Plan> ofWeek(IsoWeek week) {
        return plans.ofWeek(week);
    }

    @Override
    public List<Long> acceptedIn(IsoWeek week) {
        return plans.acceptedIn(week);
    }

    @Override
    public List<Long> acceptedUpTo(IsoWeek week) {
        return plans.acceptedUpTo(week);
    }

    @Override
    public Map<String, Integer> acceptedCounts(Collection<String> of) {
        return plans.acceptedCounts(of);
    }

    @Override
    public List<Plan> nearEquals(long id) {
        return plans.nearTo(id);
    }

    @Override
    public List<Relative> relatives(long id) {
        return plans.relatives(id);
    }

    @Override
    public PlanComparison compare(long first, long second) {
        List<FieldError> errors = new ArrayList<>();
        Plan a = compared("a", "First plan", first, errors);
        Plan b = compared("b", "Second plan", second, errors);
        if (a == null || b == null) {
            throw new InvalidInputException(errors);
        }
        if (first == second) {
            throw new InvalidInputException(
                    new FieldError("/b", "Second plan", "" + second, "is the same plan; choose another one"));
        }
        if (!a.week().equals(b.week())) {
            throw new InvalidInputException(new FieldError(
                    "/b",
                    "Second plan",
                    "" + second,
                    second + " is of " + b.week() + " and plan " + first + " of " + a.week()
                            + "; choose two of one week"));
        }
        return PlanComparison.of(a, b);
    }

    private @Nullable Plan compared(String field, String label, long id, List<FieldError> errors) {
        Plan plan = plans.find(id).orElse(null);
        if (plan == null) {
            errors.add(new FieldError("/" + field, label, "" + id, id + " does not exist; choose one that does"));
        }
        return plan;
    }

    @Override
    public WhyNot whyNot(long id, String order, String piece) {
        return required(transaction.execute(s -> {
            Plan plan = plans.find(id).orElseThrow(() -> unknown(id));
            IsoWeek week = IsoWeek.parse(plan.week());
            NeckOrder asked = orders.inWeek(week).stream()
                    .filter(o -> o.code().equals(order.strip()))
                    .findFirst()
                    .orElseThrow(() -> wrong("order", "Order", order, "is no order of week " + week));
            NeckDesign design = designs.find(asked.designCode())
                    .orElseThrow(() -> wrong("order", "Order", order, "asks for a design that is not on file"));
            Piece wood = rack.find(piece.strip())
                    .orElseThrow(() -> wrong("piece", "Piece", piece, "is no piece of the rack"));
            List<Hand> decided = handsOf(week);
            MatchInput.Line line = new MatchInput.Line(
                    asked.code(), new ByHand(decided).arranged(asked.code(), design), List.of(1), asked.priority());
            List<Piece> cut = rack.findAll(
                    plan.layouts().stream().map(Plan.PieceLayout::piece).toList());
            MatchInput input = afterwards(week, List.of(line), cut, decided);
            return new WhyNotQuestion(plan, input, line, wood).answer();
        }));
    }

    @Override
    public List<BlankAnswer> oneMore(long id, Length length, Length width, Length thickness) {
        return required(transaction.execute(s -> {
            Plan plan = plans.find(id).orElseThrow(() -> unknown(id));
            IsoWeek week = IsoWeek.parse(plan.week());
            List<Hand> decided = handsOf(week);
            ByHand byHand = new ByHand(decided);
            Map<String, NeckDesign> onFile =
                    designs.all().stream().collect(Collectors.toMap(NeckDesign::code, Function.identity()));
            List<MatchInput.Line> lines = new ArrayList<>();
            for (Plan.Unfilled u : plan.unfilled()) {
                NeckDesign design = onFile.get(u.design());
                if (design != null) {
                    lines.add(new MatchInput.Line(u.order(), byHand.arranged(u.order(), design), List.of(1), 1));
                }
            }
            OneMore oneMore = new OneMore(
                    afterwards(week, lines, rack.free(), decided),
                    plan.layouts().stream().map(Plan.PieceLayout::piece).collect(Collectors.toSet()));
            OneMore.Blank blank = new OneMore.Blank(length, width, thickness);
            return lines.stream().map(l -> oneMore.answer(l, blank)).toList();
        }));
    }

    /** A question about a plan that is made already, to the shop as it is now. */
    private MatchInput afterwards(IsoWeek week, List<MatchInput.Line> lines, List<Piece> pieces, List<Hand> decided) {
        return new MatchInput(
                week,
                Plan.Asked.WEEK,
                lines,
                designs.all(),
                pieces,
                shop.settings(),
                shop.saws(),
                workDay(week),
                decided,
                reserved(),
                woods());
    }

    private static InvalidInputException wrong(String field, String label, String value, String what) {
        return new InvalidInputException(
                new FieldError("/" + field, label, value, "“" + value + "” " + what + "; name one that is"));
    }

    private WoodWords woods() {
        return WoodWords.of(rooms.woods().all());
    }

    /** The day the wood must be ready. */
    private LocalDate workDay(IsoWeek week) {
        LocalDate today = LocalDate.now(clock);
        return week.monday().isAfter(today) ? week.monday() : today;
    }

    @Override
    public Plan accept(long id) {
        try {
            return required(transaction.execute(s -> acceptLocked(id)));
        } catch (DuplicateKeyException e) {
            throw new ConflictException(SAME_MOMENT, e);
        }
    }

    private Plan acceptLocked(long id) {
        Plan plan = plans.lock(id).orElseThrow(() -> unknown(id));
        if (plan.state() == Plan.State.ACCEPTED) {
            return plan;
        }
        refuseEmpty(plan);
        return hold(plan, plans.designs(id), plan.madeAt());
    }

    private static void refuseEmpty(Plan plan) {
        if (plan.pairings().isEmpty()) {
            throw new ConflictException("Plan " + plan.id() + " makes no neck; there is nothing to accept.");
        }
    }

    private void refuseElsewhere(Plan plan) {
        refuseElsewhere(plan.necks());
    }

    private void refuseElsewhere(List<PlannedNeck> necks) {
        Map<PlannedNeck, Long> elsewhere = plans.acceptedElsewhere(necks);
        if (!elsewhere.isEmpty()) {
            throw new ConflictException(Words.capital(Words.list(elsewhere.entrySet().stream()
                            .map(e -> e.getKey().title() + " (plan " + e.getValue() + ")")
                            .toList()))
                    + (elsewhere.size() == 1 ? " is" : " are")
                    + " in an accepted plan already. Undo that plan first, or match the week again.");
        }
    }

    /**
     * Reserves what the plan cuts and its necks.
     *
     * @param designs versions of its designs when it was searched for
     * @param since when that was
     */
    private Plan hold(Plan plan, Map<String, Long> designs, Instant since) {
        refuseElsewhere(plan);
        List<String> changes = changes(plan, designs);
        if (!changes.isEmpty()) {
            throw new ConflictException(String.join(" ", changes) + " Nothing was reserved; match the week again.");
        }
        plans.holdNecks(plan.necks());
        try {
            rack.reserve(plan.id(), stamps(plan));
        } catch (PieceNotFreeException e) {
            throw new ConflictException(
                    String.join(" ", e.reasons()) + lastActs(plan, since)
                            + " Nothing was reserved; match the week again.",
                    e);
        }
        plans.changeState(plan.id(), Plan.State.ACCEPTED);
        return plan.saved(plan.id(), Plan.State.ACCEPTED);
    }

    /**
     * What came of accepting some orders of a plan.
     *
     * @param remainder what is left to match; empty when nothing is
     */
    record Locking(Plan accepted, @Nullable Question remainder) {}

    /** Belongs into its caller's transaction. */
    Locking lock(long id, List<String> orders) {
        Plan plan = plans.lock(id).orElseThrow(() -> unknown(id));
        if (plan.state() == Plan.State.ACCEPTED) {
            throw new ConflictException("Plan " + id + " is accepted already; undo it to lock some of its orders.");
        }
        refuseEmpty(plan);
        Plan locked = LockedOrders.of(plan, orders, clock.instant());
        Plan accepted;
        if (locked.filled() == plan.filled()) {
            accepted = hold(plan, plans.designs(id), plan.madeAt());
        } else {
            Map<String, Long> designs = plans.designs(id);
            designs.keySet()
                    .retainAll(
                            locked.pairings().stream().map(Plan.Pairing::design).collect(Collectors.toSet()));
            PlanCheck.Facts facts = factsOf(locked);
            accepted = hold(plans.insert(locked, designs), designs, plan.madeAt());
            checked(locked, facts);
        }
        return new Locking(accepted, remainder(plan));
    }

    /** The locked orders as they stand before its pieces are reserved: they ask for the necks that are made and no more. */
    private PlanCheck.Facts factsOf(Plan locked) {
        IsoWeek week = IsoWeek.parse(locked.week());
        Map<String, Integer> made = new TreeMap<>();
        locked.pairings().forEach(p -> made.merge(p.order(), 1, Integer::sum));
        List<NeckOrder> asked = new ArrayList<>();
        for (NeckOrder order : orders.inWeek(week)) {
            Integer necks = made.get(order.code());
            if (necks != null) {
                asked.add(remaining(order, necks));
            }
        }
        List<Piece> pieces = rack.findAll(
                locked.layouts().stream().map(Plan.PieceLayout::piece).toList());
        return new PlanCheck.Facts(pieces, designs.all(), asked, shop.settings(), shop.saws(), workDay(week));
    }

    private @Nullable Question remainder(Plan plan) {
        IsoWeek week = IsoWeek.parse(plan.week());
        List<Hand> decided = handsOf(week);
        ByHand byHand = new ByHand(decided);
        List<String> open = orders.inWeek(week).stream()
                .filter(o ->
                        plan.asked().orders().isEmpty() || plan.asked().orders().contains(o.code()))
                .filter(o -> !byHand.leftOut(o.code()))
                .filter(o -> plans.accepted(o.code()).size() < o.quantity())
                .map(NeckOrder::code)
                .toList();
        if (open.isEmpty()) {
            return null;
        }
        List<String> named = plan.asked().orders().isEmpty() ? List.of() : open;
        Plan.Origin origin = new Plan.Origin(Plan.OriginKind.REMAINDER, plan.id());
        return read(week, new Plan.Asked(named, plan.asked().seed(), origin), decided);
    }

    /** Who did what to the plan's pieces since it was made, where the ledger knows. */
    private String lastActs(Plan plan, Instant since) {
        StringBuilder told = new StringBuilder();
        for (PieceStamp stamp : stamps(plan)) {
            rooms.history().get().of(stamp.code()).stream()
                    .filter(e -> e.at().isAfter(since))
                    .findFirst()
                    .ifPresent(e -> told.append(' ')
                            .append(stamp.code())
                            .append(": ")
                            .append(e.what().toLowerCase(Locale.ROOT))
                            .append(e.who().isBlank() ? "" : " by " + e.who())
                            .append(" on ")
                            .append(MOMENT.format(e.at().atZone(clock.getZone())))
                            .append('.'));
        }
        return told.toString();
    }

    /** What the plan was made for and is not so any more. Its pieces are told by the rack. */
    private List<String> changes(Plan plan, Map<String, Long> made) {
        List<String> changes = new ArrayList<>();
        made.forEach((code, version) -> {
            Optional<NeckDesign> now = designs.find(code);
            if (now.isEmpty() || now.get().version() != version) {
                changes.add("Design " + code + " was changed since.");
            }
        });
        Map<String, NeckOrder> now = orders.inWeek(IsoWeek.parse(plan.week())).stream()
                .collect(Collectors.toMap(NeckOrder::code, Function.identity()));
        for (Plan.Pairing pairing : plan.pairings()) {
            NeckOrder order = now.get(pairing.order());
            if (order == null || !order.designCode().equals(pairing.design()) || order.quantity() < pairing.number()) {
                changes.add("Order " + pairing.order() + " does not ask for its neck no. " + pairing.number()
                        + " of design " + pairing.design() + " in this week any more.");
            }
        }
        return changes;
    }

    @Override
    public Plan undo(long id) {
        return required(transaction.execute(s -> undoLocked(id)));
    }

    private Plan undoLocked(long id) {
        Plan plan = plans.lock(id).orElseThrow(() -> unknown(id));
        return switch (plan.state()) {
            case UNDONE -> plan;
            case PROPOSED -> throw new ConflictException("Plan " + id + " was not accepted; there is nothing to undo.");
            case ACCEPTED -> {
                rack.release(id);
                plans.freeNecks(id);
                plans.changeState(id, Plan.State.UNDONE);
                yield plan.saved(id, Plan.State.UNDONE);
            }
        };
    }

    @Override
    public NeckStanding neck(PlannedNeck neck) {
        return required(transaction.execute(s ->
                standing(plans.find(neck.plan()).orElseThrow(() -> unknown(neck.plan())), neck)));
    }

    private NeckStanding standing(Plan plan, PlannedNeck neck) {
        Plan.Pairing pairing = pairing(plan, neck);
        List<Plan.Pairing> others = plans.held(plan).stream()
                .filter(p -> !p.of(plan.id()).equals(neck))
                .toList();
        List<Wood> wood = new ArrayList<>();
        for (String code : pairing.pieces()) {
            List<String> sharing = others.stream()
                    .filter(p -> p.pieces().contains(code))
                    .map(p -> p.of(plan.id()).title())
                    .toList();
            boolean held = plan.state() == Plan.State.ACCEPTED
                    && rack.holder(code).stream().anyMatch(h -> h == plan.id());
            PieceState state = rack.find(code).map(Piece::state).orElse(PieceState.SCRAPPED);
            Fate fate = state == PieceState.USED_UP
                    ? Fate.CUT
                    : !held || !state.isThere() ? Fate.NOT_HELD : sharing.isEmpty() ? Fate.FREED : Fate.NEEDED;
            wood.add(new Wood(code, fate, sharing));
        }
        return new NeckStanding(pairing, given(neck).orElse(null), wood);
    }

    @Override
    public List<GivenUp> givenUp(long plan) {
        return plans.givenUp(plan);
    }

    @Override
    public GivingUp giveUp(PlannedNeck neck, String who, String why) {
        List<FieldError> errors = Doing.refusals(who, why);
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return required(transaction.execute(s -> giveUpLocked(neck, who.strip(), why.strip())));
    }

    private GivingUp giveUpLocked(PlannedNeck neck, String who, String why) {
        Plan plan = lockAccepted(neck.plan());
        NeckStanding standing = standing(plan, neck);
        if (standing.givenUp() != null) {
            return new GivingUp(standing.givenUp(), List.of());
        }
        GivenUp given = new GivenUp(neck, clock.instant().truncatedTo(ChronoUnit.SECONDS), who, why);
        plans.giveUp(given);
        List<String> alone = standing.wood().stream()
                .filter(w -> w.fate() == Fate.FREED)
                .map(Wood::piece)
                .toList();
        List<String> freed = rack.release(
                plan.id(), alone, neck.title() + " is given up", Doing.of(PieceChanged.Kind.RELEASED, who, why));
        events.publishEvent(new NeckGivenUp(neck));
        return new GivingUp(given, freed);
    }

    private Plan lockAccepted(long id) {
        Plan plan = plans.lock(id).orElseThrow(() -> unknown(id));
        if (plan.state() != Plan.State.ACCEPTED) {
            throw new ConflictException("Plan " + id + " is not accepted, so it makes no neck.");
        }
        return plan;
    }

    private static Plan.Pairing pairing(Plan plan, PlannedNeck neck) {
        return plan.pairings().stream()
                .filter(p -> p.of(plan.id()).equals(neck))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("Plan " + plan.id() + " makes no neck “"
                        + (neck.order().length() > 40 ? neck.order().substring(0, 40) + "…" : neck.order()) + "” no. "
                        + neck.number() + "."));
    }

    private Optional<GivenUp> given(PlannedNeck neck) {
        return plans.givenUp(neck.plan()).stream()
                .filter(g -> g.neck().equals(neck))
                .findFirst();
    }

    @Override
    public void makeAfterAll(PlannedNeck neck) {
        try {
            transaction.executeWithoutResult(s -> makeAfterAllLocked(neck));
        } catch (DuplicateKeyException e) {
            throw new ConflictException(SAME_MOMENT, e);
        }
    }

    private void makeAfterAllLocked(PlannedNeck neck) {
        Plan plan = lockAccepted(neck.plan());
        Plan.Pairing pairing = pairing(plan, neck);
        if (given(neck).isEmpty()) {
            return;
        }
        refuseElsewhere(List.of(neck));
        plans.holdNecks(List.of(neck));
        // What was freed was not cut, so it stands as the plan has it; what was cut is gone or carries on under the
        // plan.
        Set<String> free = rack.findAll(pairing.pieces()).stream()
                .filter(p -> p.state() != PieceState.USED_UP)
                .filter(p -> rack.holder(p.code()).stream().noneMatch(h -> h == plan.id()))
                .map(Piece::code)
                .collect(Collectors.toSet());
        try {
            rack.reserve(
                    plan.id(),
                    stamps(plan).stream().filter(s -> free.contains(s.code())).toList());
        } catch (PieceNotFreeException e) {
            throw new ConflictException(
                    String.join(" ", e.reasons()) + " " + neck.title()
                            + " cannot be made as planned any more; match its" + " week for it.",
                    e);
        }
    }

    private static NotFoundException unknown(long id) {
        return new NotFoundException("There is no plan " + id + ".");
    }
}
