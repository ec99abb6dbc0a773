package org.scarfwright.ledger;

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
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Outcomes of entries that stand, to be added up. */
@Repository
class YieldTable {
    private final JdbcClient jdbc;

    YieldTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** From the first moment until before the second; empty for no limit. */
    record Span(@Nullable Instant from, @Nullable Instant before) {
        private static final Instant EVER = Instant.parse("0001-01-01T00:00:00Z");
        private static final Instant NEVER = Instant.parse("9999-12-31T00:00:00Z");

        OffsetDateTime first() {
            return (from == null ? EVER : from).atOffset(ZoneOffset.UTC);
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
        jdbc.sql("select id, undoes from entry where undoes is not null order by id")
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

    /** Every entry that stands and took wood, in order. */
    void each(Span span, Consumer<Cut> consumer) {
        Set<Long> fallen = fallen();
        Gathering gathering = new Gathering(consumer);
        jdbc.sql("select o.*, e.acted_at, e.who from outcome o join entry e on e.id = o.entry_id"
                        + " where e.undoes is null and e.acted_at >= :first and e.acted_at < :end"
                        + " order by o.entry_id, o.position")
                .param("first", span.first())
                .param("end", span.end())
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

    /** What the pieces of the same entries lost, by their sizes. */
    Volume taken(Span span) {
        Set<Long> fallen = fallen();
        BigInteger[] sum = {BigInteger.ZERO};
        jdbc.sql("select a.entry_id, sum(a.volume_before_um3 - a.volume_after_um3) as taken_um3 from act a"
                        + " join entry e on e.id = a.entry_id"
                        + " where a.kind in ('CUT', 'SCRAPPED') and e.undoes is null"
                        + " and e.acted_at >= :first and e.acted_at < :end group by a.entry_id order by a.entry_id")
                .param("first", span.first())
                .param("end", span.end())
                .query((RowCallbackHandler) rs -> {
                    if (!fallen.contains(rs.getLong("entry_id"))) {
                        sum[0] = sum[0].add(rs.getBigDecimal("taken_um3").toBigIntegerExact());
                    }
                });
        return new Volume(sum[0]);
    }

    /** A neck of which both parts are cut; cost is empty when nobody knows it. */
    record Neck(String design, @Nullable Money cost) {}

    List<Neck> necks(Span span) {
        return jdbc.sql(
                        "select n.design_code, n.cost_cents, n.costless_um3 from (select plan_id, order_code, neck_number,"
                                + " max(design_code) as design_code, coalesce(sum(cost_cents), 0) as cost_cents,"
                                + " sum(case when cost_cents is null then abs(volume_um3) else 0 end) as costless_um3,"
                                + " sum(case when kind = 'PART' and part = 'NECK' then volume_um3 else 0 end) as neck_um3,"
                                + " sum(case when kind = 'PART' and part = 'HEAD' then volume_um3 else 0 end) as head_um3,"
                                + " max(case when kind = 'PART' and volume_um3 > 0 then entry_id end) as last_entry"
                                + " from outcome where order_code is not null group by plan_id, order_code, neck_number) n"
                                + " join entry e on e.id = n.last_entry"
                                + " where n.neck_um3 > 0 and n.head_um3 > 0 and e.acted_at >= :first and e.acted_at < :end"
                                + " order by n.design_code, n.order_code, n.neck_number, n.plan_id")
                .param("first", span.first())
                .param("end", span.end())
                .query((rs, n) -> new Neck(
                        rs.getString("design_code"),
                        rs.getBigDecimal("costless_um3").signum() > 0 ? null : new Money(rs.getLong("cost_cents"))))
                .list();
    }
}
