package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.Outcome;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Outcomes of entries that stand, to be added up. */
@Repository
class YieldTable {
    /** Written so that no database takes the index of what is undone for it, in which nearly all entries are. */
    private static final String TAKES_NOTHING_BACK = "coalesce(e.undoes, 0) = 0";

    private final JdbcClient jdbc;

    YieldTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** From the first moment until before the second; empty for no limit. */
    record Span(@Nullable Instant from, @Nullable Instant before) {
        static final Span EVER = new Span(null, null);

        private static final Instant BEGINNING = Instant.parse("0001-01-01T00:00:00Z");
        private static final Instant NEVER = Instant.parse("9999-12-31T00:00:00Z");

        /** Without limits the database should go through the entries in their order and look at no index of times. */
        private String condition() {
            return from == null && before == null ? "" : " and e.acted_at >= :first and e.acted_at < :end";
        }

        OffsetDateTime first() {
            return (from == null ? BEGINNING : from).atOffset(ZoneOffset.UTC);
        }

        OffsetDateTime end() {
            return (before == null ? NEVER : before).atOffset(ZoneOffset.UTC);
        }
    }

    /** An entry with what became of the wood it took. */
    record Cut(long entry, Instant at, String who, List<Outcome> outcomes) {}

    /** Numbers of entries that count as if they had never been: each was taken back, and that was not taken back itself. */
    private Set<Long> fallen() {
        Map<Long, Long> undoneBy = new HashMap<>();
        jdbc.sql("select id, undoes from entry where undoes >= 1 order by id")
                .query((RowCallbackHandler) rs -> undoneBy.put(rs.getLong("undoes"), rs.getLong("id")));
        Set<Long> undoing = new HashSet<>(undoneBy.values());
        Set<Long> fallen = new HashSet<>();
        for (Long root : undoneBy.keySet()) {
            if (!undoing.contains(root)) {
                int times = 0;
                for (Long at = undoneBy.get(root); at != null; at = undoneBy.get(at)) {
                    times++;
                }
                if (times % 2 == 1) {
                    fallen.add(root);
                }
            }
        }
        return fallen;
    }

    /** Which outcomes: a condition on {@code outcome o} and {@code entry e}, and its values. */
    record Only(String condition, Map<String, ?> values) {
        static final Only ALL = new Only("", Map.of());
    }

    /** Every entry that stands and took wood, in order. */
    void each(Span span, Consumer<Cut> consumer) {
        each(span, Only.ALL, consumer);
    }

    /** The same with only some of its outcomes. */
    void each(Span span, Only only, Consumer<Cut> consumer) {
        Set<Long> fallen = fallen();
        Gathering gathering = new Gathering(consumer);
        jdbc.sql("select o.*, e.acted_at, e.who from entry e join outcome o on o.entry_id = e.id"
                        + " where " + TAKES_NOTHING_BACK + span.condition() + only.condition()
                        + " order by o.entry_id, o.position")
                .param("first", span.first())
                .param("end", span.end())
                .params(only.values())
                .query((RowCallbackHandler) rs -> {
                    if (!fallen.contains(rs.getLong("entry_id"))) {
                        gathering.add(rs);
                    }
                });
        gathering.end();
    }

    private static final class Gathering {
        private final Consumer<Cut> consumer;
        private long entry = -1;
        private Instant at = Instant.EPOCH;
        private String who = "";
        private List<Outcome> outcomes = new ArrayList<>();

        Gathering(Consumer<Cut> consumer) {
            this.consumer = consumer;
        }

        void add(ResultSet rs) throws SQLException {
            if (rs.getLong("entry_id") != entry) {
                end();
                entry = rs.getLong("entry_id");
                at = rs.getObject("acted_at", OffsetDateTime.class).toInstant();
                who = rs.getString("who");
                outcomes = new ArrayList<>();
            }
            outcomes.add(EntryTable.outcome(rs));
        }

        void end() {
            if (!outcomes.isEmpty()) {
                consumer.accept(new Cut(entry, at, who, List.copyOf(outcomes)));
            }
        }
    }

    /** What the pieces of each of the same entries lost, by their sizes. */
    void eachTaken(Span span, BiConsumer<Instant, BigInteger> consumer) {
        Set<Long> fallen = fallen();
        jdbc.sql("select a.entry_id, e.acted_at, a.volume_before_um3 - a.volume_after_um3 as taken_um3 from act a"
                        + " join entry e on e.id = a.entry_id"
                        + " where a.kind in ('CUT', 'SCRAPPED') and " + TAKES_NOTHING_BACK + span.condition()
                        + " order by a.entry_id, a.position")
                .param("first", span.first())
                .param("end", span.end())
                .query((RowCallbackHandler) rs -> {
                    if (!fallen.contains(rs.getLong("entry_id"))) {
                        consumer.accept(
                                EntryTable.moment(rs),
                                rs.getBigDecimal("taken_um3").toBigIntegerExact());
                    }
                });
    }

    /** The same of one entry. */
    BigInteger takenIn(long entry) {
        return jdbc.sql("select coalesce(sum(volume_before_um3 - volume_after_um3), 0) as taken_um3 from act"
                        + " where entry_id = :entry and kind in ('CUT', 'SCRAPPED')")
                .param("entry", entry)
                .query(BigDecimal.class)
                .single()
                .toBigIntegerExact();
    }

    /** An entry and what it takes back, down to what takes nothing back: itself, then one after another. */
    List<Long> undone(long entry) {
        List<Long> chain = new ArrayList<>();
        Optional<Long> at = Optional.of(entry);
        while (at.isPresent()) {
            chain.add(at.get());
            at = jdbc.sql("select undoes from entry where id = :id and undoes is not null")
                    .param("id", at.get())
                    .query(Long.class)
                    .optional();
        }
        return chain;
    }

    /** One entry with all its outcomes, whether it stands or not. */
    Cut cut(long entry) {
        List<Outcome> outcomes = jdbc.sql("select * from outcome where entry_id = :entry order by position")
                .param("entry", entry)
                .query((rs, n) -> EntryTable.outcome(rs))
                .list();
        return jdbc.sql("select acted_at, who from entry where id = :entry")
                .param("entry", entry)
                .query((rs, n) -> new Cut(entry, EntryTable.moment(rs), rs.getString("who"), outcomes))
                .single();
    }

    /** Entries that stand and took wood from a piece, with all their outcomes. */
    List<Cut> standingOf(String piece) {
        List<Cut> cuts = new ArrayList<>();
        each(
                Span.EVER,
                new Only(
                        " and o.entry_id in (select s.entry_id from outcome s where s.from_piece = :piece)",
                        Map.of("piece", piece)),
                cuts::add);
        return cuts;
    }
}
