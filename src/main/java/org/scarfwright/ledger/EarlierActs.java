package org.scarfwright.ledger;

import jakarta.annotation.PostConstruct;
import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.EntryTable.Draft;
import org.scarfwright.ledger.EntryTable.DraftAct;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceDocuments;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Carries acts from before there were entries over into the chain, once, before anybody can ask for anything. Each becomes an entry
 * of its own with its time and its person; the state it left its piece in is not known any more. Then every piece that is
 * there is written down as it is, and from there on the ledger knows whole states.
 *
 * <p>Some hundred at a time are carried over and taken out of the old table in one transaction, so that a program that dies
 * meanwhile goes on where it was.
 */
@Component
class EarlierActs {
    private static final int AT_ONCE = 500;

    private final EntryTable table;
    private final PieceDocuments documents;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Clock clock;

    EarlierActs(
            EntryTable table, PieceDocuments documents, JdbcClient jdbc, TransactionTemplate transaction, Clock clock) {
        this.table = table;
        this.documents = documents;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
    }

    @PostConstruct
    void carryOver() {
        while (Boolean.TRUE.equals(transaction.execute(status -> some()))) {
            // until none is left
        }
    }

    private record Old(long id, Draft draft) {}

    /**
     * The last of them and the states of all pieces are written in one transaction: where the old table is empty, nothing is left
     * to do, and a start need not look at every piece to know.
     *
     * @return whether there is more
     */
    private boolean some() {
        List<Old> old = jdbc.sql("select * from act_before_entries order by id limit :most")
                .param("most", AT_ONCE + 1)
                .query((rs, n) -> old(rs))
                .list();
        if (old.isEmpty()) {
            return false;
        }
        boolean more = old.size() > AT_ONCE;
        List<Old> now = more ? old.subList(0, AT_ONCE) : old;
        EntryTable.Head head = table.lockHead();
        for (Old one : now) {
            head = table.append(head, one.draft());
        }
        jdbc.sql("delete from act_before_entries where id <= :last")
                .param("last", now.get(now.size() - 1).id())
                .update();
        if (!more) {
            while (undocumented()) {
                // until every piece is written down
            }
        }
        return more;
    }

    private static Old old(ResultSet rs) throws SQLException {
        long plan = rs.getLong("plan_id");
        @Nullable Long planId = rs.wasNull() ? null : Long.valueOf(plan);
        PieceChanged.Kind kind = PieceChanged.Kind.valueOf(rs.getString("kind"));
        return new Old(
                rs.getLong("id"),
                new Draft(
                        kind,
                        rs.getObject("acted_at", OffsetDateTime.class).toInstant(),
                        rs.getString("who"),
                        "",
                        null,
                        List.of(new DraftAct(
                                new PieceChanged(
                                        kind,
                                        rs.getString("piece_code"),
                                        volume(rs, "volume_before_um3"),
                                        volume(rs, "volume_after_um3"),
                                        planId,
                                        rs.getString("detail")),
                                null)),
                        List.of()));
    }

    /** Writes down the pieces of whose state nothing is known, some at a time. */
    private boolean undocumented() {
        List<String> codes = jdbc.sql("select p.code from piece p where not exists (select 1 from act a"
                        + " where a.piece_code = p.code and a.document is not null) order by p.code_order limit :most")
                .param("most", AT_ONCE)
                .query(String.class)
                .list();
        if (codes.isEmpty()) {
            return false;
        }
        EntryTable.Head head = table.lockHead();
        Map<String, String> now = documents.of(codes);
        List<DraftAct> acts = new ArrayList<>();
        now.forEach((code, document) -> acts.add(new DraftAct(
                new PieceChanged(
                        PieceChanged.Kind.CARRIED,
                        code,
                        lastVolume(code),
                        documents.volumeThere(document),
                        null,
                        "Written down as it was when the ledger began to keep whole states."),
                document)));
        table.append(
                head,
                new Draft(
                        PieceChanged.Kind.CARRIED,
                        clock.instant().truncatedTo(ChronoUnit.MICROS),
                        "the shop",
                        "",
                        null,
                        acts,
                        List.of()));
        return true;
    }

    private Volume lastVolume(String code) {
        return jdbc.sql("select volume_after_um3 from act where piece_code = :code"
                        + " order by entry_id desc, position desc limit 1")
                .param("code", code)
                .query((rs, n) -> volume(rs, "volume_after_um3"))
                .optional()
                .orElse(Volume.ZERO);
    }

    private static Volume volume(ResultSet rs, String column) throws SQLException {
        BigDecimal um3 = rs.getBigDecimal(column);
        return new Volume(um3.toBigIntegerExact());
    }
}
