package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.PieceNotFreeException;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.scarfwright.rack.WrongPieceException;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Random sequences of everything a shop can do. After each deed the ledger is held against itself and the rack, and two things are
 * known here by other means: what anybody saw of the pieces before an entry must be seen again once it is taken back, and the
 * wood that came in, by the sizes that were typed, is what is there and what was cut away.
 *
 * <p>A share runs each time; {@code mvn test -Dtest='RandomDeeds*' -Ddeeds.sequences=10000} runs as many as are asked for.
 */
@SuppressWarnings("NullAway.Init")
abstract class RandomDeedsContract {
    private static final int SEQUENCES = Integer.getInteger("deeds.sequences", 60);
    private static final int LENGTH = 14;

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    @Autowired
    Cutting cutting;

    @Autowired
    RackImport rackImport;

    @Autowired
    Losses losses;

    @Autowired
    Ledger ledger;

    @Autowired
    YieldBook book;

    @Autowired
    Verification verification;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PlatformTransactionManager transactions;

    private final Map<Deeds.Kind, Integer> done = new EnumMap<>(Deeds.Kind.class);
    private int refused;

    @Test
    void theBooksCloseAndTheRackIsWhatTheLedgerSaysWhateverIsDone() {
        TransactionTemplate whole = new TransactionTemplate(transactions);
        for (int i = 0; i < SEQUENCES; i++) {
            long seed = 20_261_126L + i;
            whole.executeWithoutResult(status -> {
                status.setRollbackOnly();
                sequence(seed);
            });
        }
        assertThat(done.keySet()).as("deeds that were done at least once").contains(Deeds.Kind.values());
        assertThat(done.values().stream().mapToInt(Integer::intValue).sum()).isGreaterThan(refused);
    }

    private void sequence(long seed) {
        Random random = new Random(seed);
        Deeds deeds = new Deeds(random, new Deeds.Services(pieces, rack, cutting, rackImport, losses, ledger));
        TransactionTemplate savepoint = new TransactionTemplate(transactions);
        savepoint.setPropagationBehavior(TransactionDefinition.PROPAGATION_NESTED);
        Map<Long, Map<String, String>> before = new HashMap<>();
        Map<Long, Volume> supply = new HashMap<>();
        Volume came = Volume.ZERO;
        for (int i = 0; i < 2; i++) {
            before.put(end() + 1, Deeds.look(all(), pieces));
            deeds.add();
            supply.put(end(), there().minus(came));
            came = there();
        }
        for (int step = 0; step < LENGTH; step++) {
            String where = "seed " + seed + ", step " + step;
            Map<String, String> seen = Deeds.look(all(), pieces);
            Volume volume = there();
            Deeds.Kind kind = deeds.any();
            long end = end();
            try {
                savepoint.executeWithoutResult(s -> deeds.run(kind, all()));
            } catch (ConflictException
                    | InvalidInputException
                    | NotFoundException
                    | PieceNotFreeException
                    | WrongPieceException
                    | IllegalArgumentException e) {
                refused++;
                assertThat(Deeds.look(all(), pieces)).as(where + ": refused").isEqualTo(seen);
                assertThat(end()).as(where + ": refused").isEqualTo(end);
                continue;
            }
            done.merge(kind, 1, Integer::sum);
            Map<String, String> now = Deeds.look(all(), pieces);
            if (end() > end) {
                long id = end();
                assertThat(id).as(where + ": one entry").isEqualTo(end + 1);
                before.put(id, seen);
                Entry entry = ledger.entry(id).orElseThrow();
                Volume brought = switch (kind) {
                    case ADD, IMPORT, RESIZE -> there().minus(volume);
                    case UNDO -> Volume.ZERO.minus(supply.getOrDefault(undone(entry), Volume.ZERO));
                    default -> Volume.ZERO;
                };
                supply.put(id, brought);
                came = came.plus(brought);
                Map<String, String> then = before.get(undone(entry));
                if (kind == Deeds.Kind.UNDO && then != null) {
                    for (Act act : entry.acts()) {
                        // A piece that came to a lot since changes with the lot's day and is not put back itself.
                        if (act.kind() != PieceChanged.Kind.UNDONE) {
                            continue;
                        }
                        assertThat(now.get(act.pieceCode()))
                                .as(where + ": " + act.pieceCode() + " is what it was before entry " + undone(entry))
                                .isEqualTo(then.get(act.pieceCode()));
                    }
                }
                List<String> touched = entry.acts().stream().map(Act::pieceCode).toList();
                seen.forEach((code, look) -> {
                    if (!touched.contains(code)) {
                        assertThat(now).as(where + ": not touched").containsEntry(code, look);
                    }
                });
            }
            assertThat(there().plus(cutAway())).as(where + ": " + kind).isEqualTo(came);
            assertThat(book.inStep())
                    .as(where + ": the yield is added up so far")
                    .isTrue();
            assertThat(verification.run().faults()).as(where + ": " + kind).isEmpty();
        }
    }

    private static long undone(Entry entry) {
        return entry.undoes() == null ? 0 : entry.undoes();
    }

    private long end() {
        return ledger.newest("", 1).acts().stream()
                .mapToLong(Act::entry)
                .findFirst()
                .orElse(0);
    }

    private List<Piece> all() {
        return pieces.list(
                        new PieceFilter("", null, null, null, null, null, null),
                        PieceFilter.Sort.CODE,
                        1,
                        Pieces.LARGEST_PAGE)
                .pieces();
    }

    private Volume there() {
        return all().stream()
                .filter(p -> p.state().isThere())
                .map(Piece::volume)
                .reduce(Volume.ZERO, Volume::plus);
    }

    /** Parts, waste, sold wood and what nobody explained. */
    private Volume cutAway() {
        return new Volume(jdbc.sql("select coalesce(sum(volume_um3), 0) from outcome where kind <> 'REST'")
                .query(BigDecimal.class)
                .single()
                .toBigIntegerExact());
    }
}
