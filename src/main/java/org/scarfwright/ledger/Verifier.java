package org.scarfwright.ledger;

import jakarta.annotation.PreDestroy;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.StoredEntry.StoredAct;
import org.scarfwright.ledger.StoredEntry.StoredOutcome;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceDocuments;
import org.scarfwright.rack.Pieces;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Reads the entries some hundred at a time and remembers of each piece only its volume and a digest of its state, so that a
 * million acts need no more memory than the pieces do.
 */
@Service
class Verifier implements Verification {
    private static final int AT_ONCE = 500;

    private final EntryTable table;
    private final PieceDocuments documents;
    private final Pieces pieces;
    private final YieldBook yields;
    private final Clock clock;
    private final TransactionTemplate snapshot;
    private final AtomicReference<@Nullable Report> last = new AtomicReference<>();
    private final AtomicReference<@Nullable Going> going = new AtomicReference<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread t = new Thread(work, "ledger-check");
        t.setDaemon(true);
        return t;
    });

    private @Nullable Future<Report> begun;

    Verifier(
            EntryTable table,
            PieceDocuments documents,
            Pieces pieces,
            YieldBook yields,
            Clock clock,
            PlatformTransactionManager transactions) {
        this.table = table;
        this.documents = documents;
        this.pieces = pieces;
        this.yields = yields;
        this.clock = clock;
        this.snapshot = new TransactionTemplate(transactions);
        snapshot.setReadOnly(true);
        snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
    }

    @Override
    public Optional<Report> last() {
        return Optional.ofNullable(last.get());
    }

    @Override
    public Optional<Going> going() {
        return Optional.ofNullable(going.get());
    }

    @Override
    public Report run() {
        try {
            Report report =
                    Objects.requireNonNull(snapshot.execute(status -> new Pass().report()), "the pass gives a report");
            last.set(report);
            return report;
        } finally {
            going.set(null);
        }
    }

    @Override
    public Optional<Report> begin(Duration patience) {
        try {
            return Optional.of(running().get(patience.toMillis(), TimeUnit.MILLISECONDS));
        } catch (TimeoutException e) {
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            throw new IllegalStateException("the ledger could not be gone through", e.getCause());
        }
    }

    private synchronized Future<Report> running() {
        Future<Report> now = begun;
        if (now == null || now.isDone()) {
            now = thread.submit(this::run);
            begun = now;
        }
        return now;
    }

    @PreDestroy
    void stop() {
        thread.shutdownNow();
    }

    /** Half of a SHA-256: enough to tell states apart. */
    private record Digest(long high, long low) {
        static Digest of(String text) {
            try {
                ByteBuffer bytes = ByteBuffer.wrap(
                        MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
                return new Digest(bytes.getLong(), bytes.getLong());
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java has SHA-256", e);
            }
        }
    }

    /**
     * A piece as its last act left it.
     *
     * @param state empty when the act is from before documents were kept
     */
    private record Left(
            long entry, BigInteger volume, @Nullable Digest state, boolean there) {}

    /** Going through it once. */
    private final class Pass {
        private final Instant begun = clock.instant();
        private final List<String> faults = new ArrayList<>();
        private final Map<String, Left> left = new HashMap<>();
        private final Map<PieceChanged.Kind, EntryTable.Sum> sums = new EnumMap<>(PieceChanged.Kind.class);
        private long faultCount;
        private long entries;
        private long acts;
        private long there;

        private void fault(String sentence) {
            faultCount++;
            if (faults.size() < MOST_NAMED) {
                faults.add(sentence);
            }
        }

        Report report() {
            EntryTable.Head head = table.head();
            going.set(new Going(begun, 0, head.entry()));
            String before = EntryHash.FIRST;
            long seen = 0;
            OptionalLong end = table.nextEnd(seen, AT_ONCE);
            while (end.isPresent()) {
                for (StoredEntry entry : table.stored(seen + 1, end.getAsLong())) {
                    if (entry.id() != seen + 1) {
                        fault("Entry " + (seen + 1) + " is missing; the next there is has number " + entry.id() + ".");
                    }
                    check(entry, before);
                    before = entry.hash();
                    seen = entry.id();
                }
                going.set(new Going(begun, seen, head.entry()));
                end = table.nextEnd(seen, AT_ONCE);
            }
            if (head.entry() != seen) {
                fault("The chain is said to end with entry " + head.entry() + ", but ends with entry " + seen + ".");
            } else if (!head.hash().equals(before)) {
                fault("The hash of the end of the chain is not that of entry " + head.entry() + ".");
            }
            checkPieces();
            checkSums();
            checkYield();
            documents.spellingFaults().forEach(this::fault);
            return new Report(
                    begun, Duration.between(begun, clock.instant()), entries, acts, there, faults, faultCount);
        }

        private void check(StoredEntry entry, String before) {
            entries++;
            if (!entry.prevHash().equals(before)) {
                fault("Entry " + entry.id() + " does not follow the entry before it: the hash it names is another.");
            }
            if (!entry.reckoned().equals(entry.hash())) {
                fault("Entry " + entry.id() + " was changed after it was written: its hash does not fit what it says.");
            }
            try {
                PieceChanged.Kind kind = PieceChanged.Kind.valueOf(entry.kind());
                for (StoredAct act : entry.acts()) {
                    check(entry, act);
                }
                conserve(entry, kind);
            } catch (IllegalArgumentException e) {
                fault("Entry " + entry.id() + " holds a word the program does not know.");
            }
        }

        private void check(StoredEntry entry, StoredAct act) {
            acts++;
            PieceChanged.Kind kind = PieceChanged.Kind.valueOf(act.kind());
            sums.computeIfAbsent(kind, k -> new EntryTable.Sum()).add(act.change());
            Left was = left.get(act.piece());
            BigInteger volume = was == null ? BigInteger.ZERO : was.volume();
            if (!act.before().equals(volume)) {
                fault("Entry " + entry.id() + " says piece " + act.piece() + " had " + words(act.before())
                        + " before it, but " + words(volume) + " were left by "
                        + (was == null ? "nothing" : "entry " + was.entry()) + ".");
            }
            String document = act.document();
            if (document != null && !documents.volumeThere(document).um3().equals(act.after())) {
                fault("Entry " + entry.id() + " says " + words(act.after()) + " of piece " + act.piece()
                        + " are left, but the state it wrote down has "
                        + words(documents.volumeThere(document).um3()) + ".");
            }
            left.put(
                    act.piece(),
                    new Left(
                            entry.id(),
                            act.after(),
                            document == null ? null : Digest.of(document),
                            !Objects.equals(document, PieceDocuments.NONE)));
        }

        /** What the acts took from the pieces is what the outcomes say became of it. */
        private void conserve(StoredEntry entry, PieceChanged.Kind kind) {
            BigInteger over = supply(entry);
            boolean closes = switch (kind) {
                case BOUGHT, IMPORTED, MEASURED, DESCRIBED, MOVED, CARRIED ->
                    entry.outcomes().isEmpty();
                case RESERVED, RELEASED, CUT, REST, FAILED, SCRAPPED, SOLD -> over.signum() == 0;
                case UNDONE ->
                    entry.undoes() != null
                            && table.stored(entry.undoes(), entry.undoes()).stream()
                                    .anyMatch(
                                            undone -> supply(undone).negate().equals(over) && reversed(undone, entry));
            };
            if (!closes) {
                fault("Entry " + entry.id()
                        + " does not close: what its pieces lost is not what is said to have become of it"
                        + (over.signum() == 0 ? "." : "; " + words(over) + " are over."));
            }
            for (StoredOutcome rest : entry.outcomes()) {
                if (Outcome.Kind.valueOf(rest.kind()) == Outcome.Kind.REST
                        && entry.acts().stream()
                                .noneMatch(a -> a.piece().equals(rest.to())
                                        && a.change().equals(rest.volume()))) {
                    fault("Entry " + entry.id() + " names a rest " + rest.to() + " that no piece became.");
                }
            }
        }

        private BigInteger supply(StoredEntry entry) {
            BigInteger sum = entry.acts().stream().map(StoredAct::change).reduce(BigInteger.ZERO, BigInteger::add);
            for (StoredOutcome o : entry.outcomes()) {
                if (Outcome.Kind.valueOf(o.kind()) != Outcome.Kind.REST) {
                    sum = sum.add(o.volume());
                }
            }
            return sum;
        }

        private static boolean reversed(StoredEntry undone, StoredEntry by) {
            return undone.outcomes().stream()
                    .map(o -> o.volume().negate())
                    .toList()
                    .equals(by.outcomes().stream().map(StoredOutcome::volume).toList());
        }

        private void checkPieces() {
            documents.each((code, document) -> {
                Left was = left.remove(code);
                there++;
                if (was == null) {
                    fault("Piece " + code + " is on the rack, and no entry brought it there.");
                } else if (was.state() == null) {
                    fault("Piece " + code + " is on the rack, and no entry says what it is.");
                } else if (!was.state().equals(Digest.of(document))) {
                    fault("Piece " + code + " is not what entry " + was.entry() + " left it as: "
                            + difference(code, was.entry(), document) + ".");
                }
            });
            new TreeMap<>(left).forEach((code, was) -> {
                if (was.there()) {
                    fault("Piece " + code + " is missing; entry " + was.entry() + " left it in the shop’s books.");
                }
            });
        }

        private String difference(String code, long entry, String document) {
            if (faults.size() >= MOST_NAMED) {
                return "more than can be named";
            }
            String before = table.before(code, entry + 1)
                    .map(EntryTable.Before::document)
                    .orElse("");
            Map<String, String> one = lines(before);
            Map<String, String> other = lines(document);
            TreeSet<String> names = new TreeSet<>(one.keySet());
            names.addAll(other.keySet());
            names.removeIf(n -> Objects.equals(one.get(n), other.get(n)));
            return String.join(
                    ", ",
                    names.stream()
                            .limit(3)
                            .map(n -> n + " is " + shown(other.get(n)) + " instead of " + shown(one.get(n)))
                            .toList());
        }

        private static Map<String, String> lines(String document) {
            Map<String, String> lines = new HashMap<>();
            for (String line : document.split("\n", -1)) {
                int at = line.indexOf('=');
                if (at > 0) {
                    lines.put(line.substring(0, at), line.substring(at + 1));
                }
            }
            return lines;
        }

        private static String shown(@Nullable String value) {
            String text = value == null ? "nothing" : value.replace("\\n", " ");
            return text.length() > 60 ? text.substring(0, 60) + "…" : text;
        }

        private void checkSums() {
            List<Balance.Line> kept;
            try {
                kept = table.balance();
            } catch (IllegalArgumentException e) {
                fault("The sums of the acts hold a kind of act the program does not know.");
                kept = List.of();
            }
            List<Balance.Line> added = sums.entrySet().stream()
                    .map(e -> e.getValue().line(e.getKey()))
                    .toList();
            for (PieceChanged.Kind kind : PieceChanged.Kind.values()) {
                if (!line(kept, kind).equals(line(added, kind))) {
                    fault("The sum of all acts of the kind " + kind.name().toLowerCase(Locale.ROOT)
                            + " is not what the acts add up to.");
                }
            }
            Balance balance = new Balance(added, pieces.volume());
            if (!balance.closes()) {
                fault("The pieces that are there differ from what the acts account for by "
                        + words(balance.unexplained().um3()) + ".");
            }
        }

        /** What is kept for the yield follows from the outcomes; where those cannot be read, that is said of their entry above. */
        private void checkYield() {
            try {
                yields.faults().forEach(this::fault);
            } catch (IllegalArgumentException | ArithmeticException e) {
                fault("The yield cannot be added up: an outcome holds what the program does not know.");
            }
        }

        private static Optional<Balance.Line> line(List<Balance.Line> lines, PieceChanged.Kind kind) {
            return lines.stream().filter(l -> l.kind() == kind).findFirst();
        }

        private static String words(BigInteger um3) {
            return new Volume(um3).toMm3().stripTrailingZeros().toPlainString() + " mm³";
        }
    }
}
