package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.StoredEntry.StoredAct;
import org.scarfwright.ledger.StoredEntry.StoredOutcome;
import org.scarfwright.rack.PieceChanged;

/** Writes rows in batches, entries in the program's own chain of hashes. */
final class ShopRows {
    private static final int AT_ONCE = 2_000;

    private final Connection connection;
    private final Map<String, PreparedStatement> statements = new LinkedHashMap<>();
    private final Map<PieceChanged.Kind, Kept> kept = new EnumMap<>(PieceChanged.Kind.class);
    private String hash = EntryHash.FIRST;
    private long entries;
    private long acts;
    private long outcomes;
    private int waiting;

    private static final class Kept {
        private long acts;
        private BigInteger in = BigInteger.ZERO;
        private BigInteger out = BigInteger.ZERO;
    }

    ShopRows(Connection connection) {
        this.connection = connection;
    }

    long entries() {
        return entries;
    }

    long acts() {
        return acts;
    }

    long outcomes() {
        return outcomes;
    }

    /** Puts a row into the batch of its table. */
    void row(String table, String columns, @Nullable Object... values) throws SQLException {
        PreparedStatement statement = statements.get(table);
        if (statement == null) {
            statement = connection.prepareStatement(
                    "insert into " + table + " (" + columns + ") values (" + "?, ".repeat(values.length - 1) + "?)");
            statements.put(table, statement);
        }
        for (int i = 0; i < values.length; i++) {
            Object value = values[i];
            statement.setObject(
                    i + 1,
                    value instanceof Instant at
                            ? at.atOffset(ZoneOffset.UTC)
                            : value instanceof BigInteger whole ? new BigDecimal(whole) : value);
        }
        statement.addBatch();
        waiting++;
    }

    /** Writes what waits; the tables in the order they were first written to, so that what is referred to is there. */
    void flush() throws SQLException {
        for (PreparedStatement statement : statements.values()) {
            statement.executeBatch();
        }
        connection.commit();
        waiting = 0;
    }

    void entry(PieceChanged.Kind kind, Instant at, String who, List<StoredAct> changes, List<StoredOutcome> became)
            throws SQLException {
        StoredEntry open = new StoredEntry(entries + 1, kind.name(), at, who, "", null, hash, "", changes, became);
        hash = open.reckoned();
        entries++;
        row(
                "entry",
                "id, kind, acted_at, who, why, prev_hash, hash",
                entries,
                kind.name(),
                at,
                who,
                "",
                open.prevHash(),
                hash);
        for (StoredAct a : changes) {
            acts++;
            add(a);
            row(
                    "act",
                    "entry_id, position, kind, piece_code, volume_before_um3, volume_after_um3, plan_id, detail, document",
                    entries,
                    a.position(),
                    a.kind(),
                    a.piece(),
                    a.before(),
                    a.after(),
                    a.plan(),
                    a.detail(),
                    a.document());
        }
        for (StoredOutcome o : became) {
            outcomes++;
            row(
                    "outcome",
                    "entry_id, position, kind, cause, from_piece, to_piece, volume_um3, planned_um3, cost_cents, plan_id,"
                            + " order_code, neck_number, design_code, part, length_um, width_um, thickness_um",
                    entries,
                    o.position(),
                    o.kind(),
                    o.cause(),
                    o.from(),
                    o.to(),
                    o.volume(),
                    o.planned(),
                    o.cost(),
                    o.plan(),
                    o.order(),
                    o.number(),
                    o.design(),
                    o.part(),
                    o.length(),
                    o.width(),
                    o.thickness());
        }
        flushIfFull();
    }

    void flushIfFull() throws SQLException {
        if (waiting > AT_ONCE) {
            flush();
        }
    }

    /** Ids by name. */
    void ids(String table, String column, Map<String, Long> found) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rs = statement.executeQuery("select id, " + column + " from " + table + " order by id")) {
            while (rs.next()) {
                found.put(rs.getString(2), rs.getLong(1));
            }
        }
    }

    private void add(StoredAct a) {
        Kept sum = kept.computeIfAbsent(PieceChanged.Kind.valueOf(a.kind()), k -> new Kept());
        sum.acts++;
        BigInteger change = a.change();
        if (change.signum() > 0) {
            sum.in = sum.in.add(change);
        } else {
            sum.out = sum.out.subtract(change);
        }
    }

    /** Writes the end of the chain and the sums. */
    void end() throws SQLException {
        for (Map.Entry<PieceChanged.Kind, Kept> line : kept.entrySet()) {
            Kept sum = line.getValue();
            row("balance_line", "kind, acts, in_um3, out_um3", line.getKey().name(), sum.acts, sum.in, sum.out);
        }
        flush();
        try (PreparedStatement head = connection.prepareStatement("update ledger_head set entry_id = ?, hash = ?")) {
            head.setLong(1, entries);
            head.setString(2, hash);
            head.executeUpdate();
        }
        connection.commit();
    }

    void run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    void started(LocalDate day) throws SQLException {
        try (PreparedStatement start =
                connection.prepareStatement("update shop_start set state = 'EMPTY', started_at = ?")) {
            start.setObject(1, day.atStartOfDay().atOffset(ZoneOffset.UTC));
            start.executeUpdate();
        }
    }
}
