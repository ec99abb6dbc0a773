package org.scarfwright.ledger;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.EntryTable.Draft;
import org.scarfwright.ledger.EntryTable.DraftAct;
import org.scarfwright.ledger.EntryTable.Head;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceDocuments;
import org.scarfwright.rack.PieceHistory;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.PiecesChanged;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.NotFoundException;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.event.EventListener;
import org.springframework.security.authentication.AnonymousAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@Service
class JdbcLedger implements Ledger, PieceHistory {
    private static final int LONGEST_NAME = 120;

    /** After every act there can be. */
    private static final Spot NOW = new Spot(Long.MAX_VALUE, 1);

    /** Longest time that is the same on both databases. */
    private static final ChronoUnit FINEST = ChronoUnit.MICROS;

    private final EntryTable table;
    private final PieceDocuments documents;
    private final Pieces pieces;
    private final ObjectProvider<Plans> plans;
    private final Clock clock;

    /** Plans are asked for late: they ask the ledger for a piece's history themselves. */
    JdbcLedger(EntryTable table, PieceDocuments documents, Pieces pieces, ObjectProvider<Plans> plans, Clock clock) {
        this.table = table;
        this.documents = documents;
        this.pieces = pieces;
        this.plans = plans;
        this.clock = clock;
    }

    /**
     * Writes inside the transaction of whoever did it: an act without its entry, or an entry without its act, cannot be. The end of
     * the chain is locked before the pieces are read, so that what is written of them is what will be there.
     */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    void write(PiecesChanged event) {
        append(table.lockHead(), event);
    }

    private Head append(Head head, PiecesChanged event) {
        List<PieceChanged> changes = new ArrayList<>(event.changes());
        Set<String> named = new HashSet<>();
        changes.forEach(c -> named.add(c.pieceCode()));
        List<String> ofLots = documents.ofLots(event.lots()).stream()
                .filter(c -> !named.contains(c))
                .toList();
        named.addAll(ofLots);
        Map<String, String> now = documents.of(named);
        for (String code : ofLots) {
            Volume volume = documents.volumeThere(now.getOrDefault(code, PieceDocuments.NONE));
            changes.add(new PieceChanged(
                    PieceChanged.Kind.DESCRIBED,
                    code,
                    volume,
                    volume,
                    null,
                    "The day its lot is ready changed with another piece of the lot."));
        }
        Doing doing = event.doing();
        return table.append(
                head,
                new Draft(
                        doing.kind(),
                        now(),
                        doing.who().isBlank() ? who() : shortened(doing.who().strip()),
                        doing.why().strip(),
                        doing.undoes(),
                        changes.stream()
                                .map(c -> new DraftAct(c, now.getOrDefault(c.pieceCode(), PieceDocuments.NONE)))
                                .toList(),
                        event.outcomes()));
    }

    private Instant now() {
        return clock.instant().truncatedTo(FINEST);
    }

    /** Without sign-in everybody is the shop. */
    private static String who() {
        Authentication person = SecurityContextHolder.getContext().getAuthentication();
        if (person == null || person instanceof AnonymousAuthenticationToken || !person.isAuthenticated()) {
            return "the shop";
        }
        return shortened(person.getName());
    }

    private static String shortened(String name) {
        return name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
    }

    @Override
    @Transactional(readOnly = true)
    public ActList newest(@Nullable String pieceCode, int size) {
        return list(code(pieceCode), new From(NOW, true), size);
    }

    @Override
    @Transactional(readOnly = true)
    public ActList acts(@Nullable String pieceCode, From from, int size) {
        return list(code(pieceCode), from, size);
    }

    private static String code(@Nullable String typed) {
        return typed == null ? "" : typed.strip().toUpperCase(Locale.ROOT).replace("\0", "");
    }

    private ActList list(String code, From from, int size) {
        int most = Math.max(1, Math.min(size, LARGEST_PAGE));
        // One more than asked for tells whether there are more.
        List<Act> found = table.acts(code, from, most + 1);
        if (!from.older() && found.size() <= most) {
            return list(code, new From(NOW, true), size);
        }
        List<Act> shown = new ArrayList<>(found.subList(0, Math.min(most, found.size())));
        if (!from.older()) {
            Collections.reverse(shown);
        }
        boolean isOlder = !from.older() || found.size() > most;
        boolean isNewer = !shown.isEmpty()
                && !table.acts(code, new From(spot(shown.get(0)), false), 1).isEmpty();
        return new ActList(
                shown,
                table.count(code),
                isNewer ? spot(shown.get(0)) : null,
                isOlder ? spot(shown.get(shown.size() - 1)) : null);
    }

    private static Spot spot(Act act) {
        return new Spot(act.entry(), act.position());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Spot> after(LocalDate day) {
        return table.firstFrom(day.plusDays(1).atStartOfDay(clock.getZone()).toInstant())
                .map(id -> new Spot(id, 1));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Entry> of(String code) {
        return newest(code, LARGEST_PAGE).acts().stream()
                .map(a -> new Entry(a.entry(), a.at(), a.who(), ActWords.kind(a.kind()), a.detail()))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Stamp stamp() {
        Head head = table.head();
        return new Stamp(head.entry(), head.hash());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Set<String>> touchedSince(Stamp stamp) {
        return table.hash(stamp.entry()).filter(stamp.hash()::equals).map(hash -> table.touchedAfter(stamp.entry()));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<org.scarfwright.ledger.Entry> entry(long id) {
        return table.entry(id);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Balance.Line> lines() {
        return table.balance();
    }

    /** One snapshot, so that an act between the two sums does not look like a book that does not close. */
    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Balance balance() {
        return new Balance(table.balance(), pieces.volume());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> refusal(long id) {
        return table.entry(id).flatMap(this::refusal);
    }

    private Optional<String> refusal(org.scarfwright.ledger.Entry entry) {
        if (entry.undoneBy() != null) {
            return Optional.of("Entry " + entry.id() + " was taken back already, by entry " + entry.undoneBy() + ".");
        }
        switch (entry.kind()) {
            case RESERVED, RELEASED -> {
                return Optional.of("Entry " + entry.id() + " belongs to a plan: accept or undo the plan itself.");
            }
            case CARRIED -> {
                return Optional.of("Entry " + entry.id()
                        + " only wrote down what was there already; nothing happened that could be taken back.");
            }
            default -> {}
        }
        if (table.since(entry.who(), entry.id()) >= UNDOABLE) {
            return Optional.of("Entry " + entry.id() + " is older than the last " + UNDOABLE + " entries of "
                    + entry.who() + "; only those can be taken back.");
        }
        Optional<EntryTable.Later> later = inTheWay(table.later(codes(entry), entry.id()));
        if (later.isPresent()) {
            long id = later.get().entry();
            org.scarfwright.ledger.Entry by = table.entry(id).orElseThrow();
            return Optional.of("Entry " + id + " ("
                    + ActWords.kind(by.kind()).toLowerCase(Locale.ROOT) + ", by " + by.who()
                    + ") came after it on piece " + later.get().piece() + ". Take that back first.");
        }
        return earlier(entry).entrySet().stream()
                .flatMap(e -> cannotBe(e.getKey(), e.getValue()).stream())
                .findFirst();
    }

    /** The newest of the entries that came later and still counts: one that was taken back, and what took it back, do not. */
    private static Optional<EntryTable.Later> inTheWay(List<EntryTable.Later> later) {
        Set<Long> all = new HashSet<>();
        later.forEach(l -> all.add(l.entry()));
        Set<Long> takenBack = new HashSet<>();
        for (EntryTable.Later l : later) {
            if (takenBack.contains(l.entry())) {
                continue;
            }
            if (!all.contains(l.undoes())) {
                return Optional.of(l);
            }
            takenBack.add(l.undoes());
        }
        return Optional.empty();
    }

    /** A piece can only be put back into the hands of a plan that still holds. */
    private Optional<String> cannotBe(String code, Optional<String> document) {
        if (document.isEmpty()) {
            return Optional.of("What piece " + code
                    + " was before is not known: the entry is from before the ledger kept whole states.");
        }
        return documents.planOf(document.get()).stream()
                .boxed()
                .filter(plan -> plans.getObject()
                        .find(plan)
                        .filter(p -> p.state() == Plan.State.ACCEPTED)
                        .isEmpty())
                .map(plan -> "Piece " + code + " was held by plan " + plan + " then, and that plan was undone since.")
                .findFirst();
    }

    private static List<String> codes(org.scarfwright.ledger.Entry entry) {
        return entry.acts().stream().map(Act::pieceCode).distinct().sorted().toList();
    }

    /** The states before an entry, by code; empty where nobody knows. */
    private Map<String, Optional<String>> earlier(org.scarfwright.ledger.Entry entry) {
        Map<String, Optional<String>> before = new LinkedHashMap<>();
        for (String code : codes(entry)) {
            before.put(
                    code,
                    table.before(code, entry.id())
                            .map(b -> Optional.ofNullable(b.document()))
                            .orElse(Optional.of(PieceDocuments.NONE)));
        }
        return before;
    }

    @Override
    @Transactional
    public org.scarfwright.ledger.Entry undo(long id, String who, String why) {
        // The rows of the pieces are locked before the end of the chain, as everybody locks them.
        org.scarfwright.ledger.Entry entry =
                table.entry(id).orElseThrow(() -> new NotFoundException("There is no entry " + id + "."));
        refuse(entry);
        Map<String, String> now = documents.of(codes(entry));
        Map<String, String> before = new LinkedHashMap<>();
        earlier(entry).forEach((code, document) -> before.put(code, document.orElseThrow()));
        Set<String> lots = documents.putBack(before);
        Head head = table.lockHead();
        // Somebody may have written about the pieces between the first look and the lock.
        refuse(table.entry(id).orElseThrow());
        List<PieceChanged> changes = new ArrayList<>();
        before.forEach((code, document) -> changes.add(new PieceChanged(
                PieceChanged.Kind.UNDONE,
                code,
                documents.volumeThere(now.getOrDefault(code, PieceDocuments.NONE)),
                documents.volumeThere(document),
                null,
                document.equals(PieceDocuments.NONE)
                        ? "Taken away: entry " + id + " was taken back."
                        : "Put back to what it was before entry " + id + ".")));
        Head end = append(
                head,
                new PiecesChanged(
                        new Doing(PieceChanged.Kind.UNDONE, who, why, id),
                        changes,
                        entry.outcomes().stream().map(Outcome::reversed).toList(),
                        lots));
        return table.entry(end.entry()).orElseThrow();
    }

    private void refuse(org.scarfwright.ledger.Entry entry) {
        refusal(entry).ifPresent(sentence -> {
            throw new ConflictException(sentence);
        });
    }
}
