package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.YieldCounting.Attribution;
import org.scarfwright.ledger.YieldKept.Named;
import org.scarfwright.ledger.YieldKept.Sum;
import org.scarfwright.ledger.YieldKept.What;
import org.scarfwright.ledger.YieldSums.Counted;
import org.scarfwright.ledger.YieldTable.Cut;
import org.scarfwright.ledger.YieldTable.Span;
import org.scarfwright.matching.Plans;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.WoodOrigins;
import org.scarfwright.rack.WoodOrigins.Origin;
import org.scarfwright.shop.ShopFileRead;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Keeps what the yield adds up to, with every entry and in its transaction. An entry that is taken back is taken off the day it was
 * made; a piece that is described as another wood, or moved to another lot, takes what was cut from it along.
 *
 * <p>All of it follows from the ledger. Where it is out of step, as in a database from before it was kept or on a machine moved to
 * another time zone, it is made anew.
 */
@Component
class YieldBook implements SmartInitializingSingleton {
    private static final Logger LOG = LoggerFactory.getLogger(YieldBook.class);
    private static final int AT_ONCE = 1000;

    private final JdbcClient jdbc;
    private final NamedParameterJdbcOperations batches;
    private final YieldTable table;
    private final WoodOrigins origins;
    private final ObjectProvider<Plans> plans;
    private final TransactionTemplate transaction;
    private final Clock clock;

    /** Plans are asked for late: they ask the ledger for a piece's history themselves. */
    YieldBook(
            JdbcClient jdbc,
            NamedParameterJdbcOperations batches,
            YieldTable table,
            WoodOrigins origins,
            ObjectProvider<Plans> plans,
            TransactionTemplate transaction,
            Clock clock) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.table = table;
        this.origins = origins;
        this.plans = plans;
        this.transaction = transaction;
        this.clock = clock;
    }

    private YieldCounting counting() {
        return new YieldCounting(plans, clock.getZone());
    }

    /** Brings it up to date before anybody can ask, and once all rooms are there to be asked. */
    @Override
    public void afterSingletonsInstantiated() {
        bringUpToDate();
    }

    /** What failed here is tried again when somebody asks for the yield; the shop that was read is saved whatever comes of it. */
    @EventListener
    void addUp(ShopFileRead read) {
        try {
            bringUpToDate();
        } catch (RuntimeException e) {
            LOG.error("The yield of the shop that was read from a file could not be added up.", e);
        }
    }

    /** Makes everything anew where it is not what the newest entry left it as. */
    void bringUpToDate() {
        if (!inStep()) {
            transaction.executeWithoutResult(status -> makeAnew());
        }
    }

    boolean inStep() {
        return jdbc.sql("select count(*) from yield_kept k join ledger_head h on h.id = k.id"
                                + " where h.entry_id = k.entry_id and k.zone = :zone")
                        .param("zone", clock.getZone().getId())
                        .query(Long.class)
                        .single()
                > 0;
    }

    /** Adds up the whole ledger. */
    @Transactional(propagation = Propagation.MANDATORY)
    void makeAnew() {
        long head = jdbc.sql("select entry_id from ledger_head where id = 1 for update")
                .query(Long.class)
                .single();
        if (head > AT_ONCE) {
            LOG.info("The yield of {} entries is added up anew; this is done once.", head);
        }
        for (String name : List.of("yield_sum", "yield_row", "yield_wood", "yield_neck", "yield_cut")) {
            jdbc.sql("delete from " + name).update();
        }
        Whole whole = whole((after, last, rows) -> batch(INSERT_ROW, rows));
        insert(whole.sums().sums());
        List<MapSqlParameterSource> woods = new ArrayList<>();
        whole.woods().forEach((piece, a) -> woods.add(wood(piece, a)));
        batch("insert into yield_wood (piece_code, wood_key, lot_code) values (:piece, :wood, :lot)", woods);
        batch(INSERT_CUT, whole.cuts());
        List<MapSqlParameterSource> necks = new ArrayList<>();
        necks("", Map.of(), necks::add);
        batch(INSERT_NECK, necks);
        step(head);
    }

    private void step(long entry) {
        jdbc.sql("update yield_kept set entry_id = :entry, zone = :zone where id = 1")
                .param("entry", entry)
                .param("zone", clock.getZone().getId())
                .update();
    }

    /** Takes the rows of the entries after one, up to another. */
    private interface RowTaker {
        void take(long after, long last, List<MapSqlParameterSource> rows);
    }

    /** Everything as the ledger says it is, but for the rows, which are too many to be held at once. */
    private record Whole(YieldKept sums, Map<String, Attribution> woods, List<MapSqlParameterSource> cuts) {}

    private Whole whole(RowTaker taker) {
        YieldKept sums = new YieldKept();
        Map<String, Attribution> woods = new TreeMap<>();
        List<MapSqlParameterSource> cuts = new ArrayList<>();
        YieldCounting counting = counting();
        List<Cut> some = new ArrayList<>();
        long[] taken = {0};
        LongConsumer count = last -> {
            attribute(counting, woods, some);
            List<MapSqlParameterSource> rows = new ArrayList<>();
            for (Cut cut : some) {
                sums.add(counting, cut, 1);
                rows.addAll(rows(counting, cut));
                YieldCounting.dot(cut).ifPresent(d -> cuts.add(cut(counting.day(cut.at()), d)));
            }
            some.clear();
            taker.take(taken[0], last, rows);
            taken[0] = last;
        };
        table.each(Span.EVER, cut -> {
            some.add(cut);
            if (some.size() == AT_ONCE) {
                count.accept(cut.entry());
            }
        });
        count.accept(Long.MAX_VALUE);
        table.eachTaken(Span.EVER, (at, um3) -> sums.taken(counting.day(at), um3, 1));
        return new Whole(sums, woods, cuts);
    }

    private void attribute(YieldCounting counting, Map<String, Attribution> woods, Collection<Cut> cuts) {
        Set<String> unknown = new TreeSet<>();
        cuts.forEach(c -> c.outcomes().stream()
                .map(Outcome::fromPiece)
                .filter(p -> !counting.knows(p))
                .forEach(unknown::add));
        Map<String, Origin> found = origins.of(unknown);
        for (String piece : unknown) {
            Attribution attribution = attribution(found.get(piece));
            counting.attribute(piece, attribution);
            woods.put(piece, attribution);
        }
    }

    private static Attribution attribution(@Nullable Origin origin) {
        return origin == null
                ? Attribution.NONE
                : new Attribution(origin.woodKey(), Objects.requireNonNullElse(origin.lot(), ""));
    }

    /** Adds what an entry changes; its rows are written already. */
    @Transactional(propagation = Propagation.MANDATORY)
    void add(StoredEntry entry) {
        // An empty ledger is in step with every place.
        int step = jdbc.sql("update yield_kept set entry_id = :entry, zone = :zone"
                        + " where id = 1 and entry_id = :before and (zone = :zone or entry_id = 0)")
                .param("entry", entry.id())
                .param("before", entry.id() - 1)
                .param("zone", clock.getZone().getId())
                .update();
        if (step == 0) {
            // Out of step already; made anew before anybody reads it.
            return;
        }
        YieldKept sums = new YieldKept();
        YieldCounting counting = counting();
        Set<Long> touched = new HashSet<>(Set.of(entry.id()));
        int sign = entry.outcomes().isEmpty() ? 0 : 1;
        long counts = entry.id();
        if (entry.undoes() != null) {
            List<Long> chain = table.undone(entry.undoes());
            counts = chain.get(chain.size() - 1);
            sign = chain.size() % 2 == 1 ? -1 : 1;
            touched.addAll(chain);
        }
        Cut cut = sign == 0 ? new Cut(counts, entry.at(), entry.who(), List.of()) : table.cut(counts);
        moveAttributions(sums, counting, entry, new Effect(cut, sign));
        if (!cut.outcomes().isEmpty()) {
            attributeNow(counting, cut);
            sums.add(counting, cut, sign);
            LocalDate day = counting.day(cut.at());
            for (String name : List.of("yield_cut", "yield_row")) {
                jdbc.sql("delete from " + name + " where entry_id = :entry")
                        .param("entry", counts)
                        .update();
            }
            if (sign > 0) {
                batch(INSERT_ROW, rows(counting, cut));
                batch(
                        INSERT_CUT,
                        YieldCounting.dot(cut).stream().map(d -> cut(day, d)).toList());
            } else {
                forget(cut);
            }
            sums.taken(day, table.takenIn(counts), sign);
            necksOf(touched);
        }
        write(sums.sums());
    }

    /** What an entry does to the sums: that a cut counts, with 1, or does not count any more, with −1. */
    private record Effect(Cut cut, int sign) {}

    /** Pieces of which no cut stands any more are no longer counted as anything. */
    private void forget(Cut cut) {
        cut.outcomes().stream().map(Outcome::fromPiece).distinct().sorted().forEach(piece -> {
            if (table.standingOf(piece).isEmpty()) {
                jdbc.sql("delete from yield_wood where piece_code = :piece")
                        .param("piece", piece)
                        .update();
            }
        });
    }

    /** Pieces that are of another wood or lot than they were counted as take what was cut from them along. */
    private void moveAttributions(YieldKept sums, YieldCounting counting, StoredEntry entry, Effect effect) {
        Map<String, Attribution> counted = new TreeMap<>();
        List<String> codes = entry.acts().stream()
                .map(StoredEntry.StoredAct::piece)
                .distinct()
                .sorted()
                .toList();
        for (List<String> some : chunks(codes)) {
            jdbc.sql("select piece_code, wood_key, lot_code from yield_wood where piece_code in (:codes)"
                            + " order by piece_code")
                    .param("codes", some)
                    .query(rs -> {
                        counted.put(
                                rs.getString("piece_code"),
                                new Attribution(rs.getString("wood_key"), rs.getString("lot_code")));
                    });
        }
        if (counted.isEmpty()) {
            return;
        }
        Map<String, Origin> now = origins.of(counted.keySet());
        counted.forEach((piece, before) -> {
            Attribution after = attribution(now.get(piece));
            if (after.equals(before)) {
                counting.attribute(piece, before);
                return;
            }
            // The cut this entry is about is added or taken off afterwards, under what the piece is now: it moves only
            // where it
            // counted until now.
            List<MapSqlParameterSource> rows = new ArrayList<>();
            List<Cut> moving = new ArrayList<>(table.standingOf(piece));
            moving.removeIf(c -> c.entry() == effect.cut().entry());
            if (effect.sign() < 0) {
                moving.add(effect.cut());
            }
            for (Cut cut : moving) {
                for (int i = 0; i < cut.outcomes().size(); i++) {
                    Outcome outcome = cut.outcomes().get(i);
                    if (outcome.fromPiece().equals(piece)) {
                        rows.add(wood(piece, after)
                                .addValue("entry", cut.entry())
                                .addValue("position", i + 1));
                        counting.attribute(piece, before);
                        sums.add(counting, cut, What.WOOD, outcome, -1);
                        sums.add(counting, cut, What.LOT, outcome, -1);
                        counting.attribute(piece, after);
                        sums.add(counting, cut, What.WOOD, outcome, 1);
                        sums.add(counting, cut, What.LOT, outcome, 1);
                    }
                }
            }
            counting.attribute(piece, after);
            batch(
                    "update yield_row set wood_key = :wood, lot_code = :lot where entry_id = :entry"
                            + " and position = :position",
                    rows);
            jdbc.sql("update yield_wood set wood_key = :wood, lot_code = :lot where piece_code = :piece")
                    .paramSource(wood(piece, after))
                    .update();
        });
    }

    /** Pieces that were never cut before count as what they are now. */
    private void attributeNow(YieldCounting counting, Cut cut) {
        Set<String> pieces = new TreeSet<>();
        cut.outcomes().forEach(o -> pieces.add(o.fromPiece()));
        Map<String, Attribution> known = new HashMap<>();
        jdbc.sql(
                        "select piece_code, wood_key, lot_code from yield_wood where piece_code in (:codes) order by piece_code")
                .param("codes", pieces)
                .query(rs -> {
                    known.put(
                            rs.getString("piece_code"),
                            new Attribution(rs.getString("wood_key"), rs.getString("lot_code")));
                });
        known.forEach(counting::attribute);
        pieces.removeAll(known.keySet());
        if (!pieces.isEmpty()) {
            Map<String, Origin> found = origins.of(pieces);
            List<MapSqlParameterSource> rows = new ArrayList<>();
            for (String piece : pieces) {
                Attribution attribution = attribution(found.get(piece));
                counting.attribute(piece, attribution);
                rows.add(wood(piece, attribution));
            }
            batch("insert into yield_wood (piece_code, wood_key, lot_code) values (:piece, :wood, :lot)", rows);
        }
    }

    private static MapSqlParameterSource wood(String piece, Attribution a) {
        return new MapSqlParameterSource("piece", piece)
                .addValue("wood", a.wood())
                .addValue("lot", a.lot());
    }

    private void write(Map<Named, Sum> some) {
        if (some.isEmpty()) {
            return;
        }
        List<Named> keys = List.copyOf(some.keySet());
        MapSqlParameterSource[] rows = keys.stream()
                .map(k -> YieldKept.row(k, Objects.requireNonNull(some.get(k))))
                .toArray(MapSqlParameterSource[]::new);
        int[] updated = batches.batchUpdate(YieldKept.update(some.values()), rows);
        List<MapSqlParameterSource> missing = new ArrayList<>();
        for (int i = 0; i < updated.length; i++) {
            if (updated[i] == 0) {
                missing.add(rows[i]);
            }
        }
        batch(YieldKept.INSERT, missing);
        if (some.values().stream().anyMatch(Sum::takesOff)) {
            batches.batchUpdate(YieldKept.DELETE_NOTHING, rows);
        }
    }

    private void insert(Map<Named, Sum> sums) {
        List<MapSqlParameterSource> rows = new ArrayList<>();
        for (Map.Entry<Named, Sum> sum : sums.entrySet()) {
            rows.add(YieldKept.row(sum.getKey(), sum.getValue()));
            if (rows.size() == AT_ONCE) {
                batch(YieldKept.INSERT, rows);
                rows.clear();
            }
        }
        batch(YieldKept.INSERT, rows);
    }

    private static final String INSERT_ROW =
            "insert into yield_row (entry_id, position, design_code, counted_on, acted_at, wood_key, lot_code, who, figure,"
                    + " rescued, counted_um3, planned_um3) values (:entry, :position, :design, :day, :at, :wood, :lot, :who,"
                    + " :figure, :rescued, :counted, :planned)";

    /** What a cut's outcomes count as; those an entry wrote are numbered from 1 without a gap. */
    private static List<MapSqlParameterSource> rows(YieldCounting counting, Cut cut) {
        List<MapSqlParameterSource> rows = new ArrayList<>();
        for (int i = 0; i < cut.outcomes().size(); i++) {
            Outcome outcome = cut.outcomes().get(i);
            Attribution attribution = counting.attribution(outcome.fromPiece());
            for (Counted c : counting.of(By.DESIGN, cut, outcome)) {
                rows.add(new MapSqlParameterSource("entry", cut.entry())
                        .addValue("position", i + 1)
                        .addValue("design", c.key())
                        .addValue("day", counting.day(cut.at()))
                        .addValue("at", cut.at().atOffset(ZoneOffset.UTC))
                        .addValue("wood", attribution.wood())
                        .addValue("lot", attribution.lot())
                        .addValue("who", cut.who())
                        .addValue("figure", c.became().name())
                        .addValue("rescued", c.rescued())
                        .addValue("counted", new BigDecimal(c.counted().um3()))
                        .addValue(
                                "planned",
                                c.planned() == null
                                        ? null
                                        : new BigDecimal(c.planned().um3())));
            }
        }
        return rows;
    }

    private static final String INSERT_CUT =
            "insert into yield_cut (entry_id, cut_on, planned_um3, real_um3) values (:entry, :day, :planned, :real)";

    private static MapSqlParameterSource cut(LocalDate day, Yield.Dot dot) {
        return new MapSqlParameterSource("entry", dot.entry())
                .addValue("day", day)
                .addValue("planned", new BigDecimal(dot.planned().um3()))
                .addValue("real", new BigDecimal(dot.real().um3()));
    }

    private static final String INSERT_NECK =
            "insert into yield_neck (plan_id, order_code, neck_number, design_code, cut_on, cost_cents)"
                    + " values (:plan, :order, :number, :design, :day, :cost)";

    /** Adds up the necks these entries wrote of. */
    private void necksOf(Collection<Long> entries) {
        Set<Losses.Neck> necks = new HashSet<>();
        jdbc.sql("select distinct plan_id, order_code, neck_number from outcome"
                        + " where entry_id in (:entries) and order_code is not null"
                        + " order by plan_id, order_code, neck_number")
                .param("entries", entries)
                .query(rs -> {
                    necks.add(new Losses.Neck(
                            rs.getLong("plan_id"), rs.getString("order_code"), rs.getInt("neck_number")));
                });
        List<MapSqlParameterSource> whole = new ArrayList<>();
        for (Losses.Neck neck : necks) {
            Map<String, Object> names = Map.of("plan", neck.plan(), "order", neck.order(), "number", neck.number());
            jdbc.sql("delete from yield_neck where plan_id = :plan and order_code = :order and neck_number = :number")
                    .params(names)
                    .update();
            necks(" and plan_id = :plan and order_code = :order and neck_number = :number", names, whole::add);
        }
        batch(INSERT_NECK, whole);
    }

    /** Necks of which both parts are cut, as the outcomes say. */
    private void necks(String which, Map<String, ?> names, Consumer<MapSqlParameterSource> taker) {
        YieldCounting days = counting();
        jdbc.sql(
                        "select n.*, e.acted_at from (select plan_id, order_code, neck_number, max(design_code) as design_code,"
                                + " coalesce(sum(cost_cents), 0) as cost_cents,"
                                + " sum(case when cost_cents is null then abs(volume_um3) else 0 end) as costless_um3,"
                                + " sum(case when kind = 'PART' and part = 'NECK' then volume_um3 else 0 end) as neck_um3,"
                                + " sum(case when kind = 'PART' and part = 'HEAD' then volume_um3 else 0 end) as head_um3,"
                                + " max(case when kind = 'PART' and volume_um3 > 0 then entry_id end) as last_entry"
                                + " from outcome where order_code is not null" + which
                                + " group by plan_id, order_code, neck_number) n join entry e on e.id = n.last_entry"
                                + " where n.neck_um3 > 0 and n.head_um3 > 0 order by n.plan_id, n.order_code, n.neck_number")
                .params(names)
                .query((RowCallbackHandler) rs -> taker.accept(neck(days, rs)));
    }

    private static MapSqlParameterSource neck(YieldCounting days, ResultSet rs) throws SQLException {
        return new MapSqlParameterSource("plan", rs.getLong("plan_id"))
                .addValue("order", rs.getString("order_code"))
                .addValue("number", rs.getInt("neck_number"))
                .addValue("design", rs.getString("design_code"))
                .addValue("day", days.day(EntryTable.moment(rs)))
                .addValue(
                        "cost",
                        rs.getBigDecimal("costless_um3").signum() > 0
                                ? null
                                : rs.getBigDecimal("cost_cents").longValueExact());
    }

    private void batch(String sql, List<MapSqlParameterSource> rows) {
        for (List<MapSqlParameterSource> some : chunks(rows)) {
            batches.batchUpdate(sql, some.toArray(MapSqlParameterSource[]::new));
        }
    }

    private static <T> List<List<T>> chunks(List<T> all) {
        List<List<T>> chunks = new ArrayList<>();
        for (int i = 0; i < all.size(); i += AT_ONCE) {
            chunks.add(all.subList(i, Math.min(all.size(), i + AT_ONCE)));
        }
        return chunks;
    }

    /**
     * Holds what is kept against the outcomes.
     *
     * @return a sentence for everything that differs; nothing where it is out of step, because then it is made anew
     */
    List<String> faults() {
        List<String> faults = new ArrayList<>();
        if (!inStep()) {
            return faults;
        }
        Whole whole = whole((after, last, rows) -> compare(
                faults,
                "What an outcome counts as in the yield",
                jdbc.sql(
                                "select entry_id, position, design_code, counted_on, acted_at, wood_key, lot_code, who, figure,"
                                        + " rescued, counted_um3, planned_um3 from yield_row where entry_id > :after and entry_id <= :last"
                                        + " order by entry_id, position, design_code")
                        .param("after", after)
                        .param("last", last),
                rows.stream().map(YieldBook::values).toList()));
        Map<Named, Sum> missing = new HashMap<>(whole.sums().sums());
        jdbc.sql("select * from yield_sum order by by_what, begins, line_key").query(rs -> {
            Named key = Named.of(rs);
            Sum added = missing.remove(key);
            if (added == null) {
                faults.add("The yield keeps sums for " + key.words() + ", for which there are no outcomes.");
            } else {
                Sum.of(rs)
                        .differences(added)
                        .forEach(f -> faults.add("The yield keeps another sum of " + f + " for " + key.words()
                                + " than the outcomes add up to."));
            }
        });
        missing.keySet().forEach(k -> faults.add("The yield keeps no sums for " + k.words() + "."));
        compare(
                faults,
                "The wood a piece counts as in the yield",
                jdbc.sql("select piece_code, wood_key, lot_code from yield_wood order by piece_code"),
                whole.woods().entrySet().stream()
                        .map(e -> List.<Object>of(
                                e.getKey(), e.getValue().wood(), e.getValue().lot()))
                        .toList());
        compare(
                faults,
                "A cut beside its plan in the yield",
                jdbc.sql("select entry_id, cut_on, planned_um3, real_um3 from yield_cut order by entry_id"),
                whole.cuts().stream().map(YieldBook::values).toList());
        List<MapSqlParameterSource> necks = new ArrayList<>();
        necks("", Map.of(), necks::add);
        compare(
                faults,
                "The cost of a neck in the yield",
                jdbc.sql("select plan_id, order_code, neck_number, design_code, cut_on, cost_cents from yield_neck"
                        + " order by plan_id, order_code, neck_number"),
                necks.stream().map(YieldBook::values).toList());
        return faults;
    }

    private static List<Object> values(MapSqlParameterSource row) {
        List<Object> values = new ArrayList<>();
        for (String name : row.getParameterNames()) {
            values.add(text(row.getValue(name)));
        }
        return values;
    }

    /** The same text for the same value, as it is written and as either database gives it back. */
    private static String text(@Nullable Object value) {
        return value instanceof BigDecimal number
                ? number.toBigIntegerExact().toString()
                : value instanceof java.sql.Date day
                        ? day.toLocalDate().toString()
                        : value instanceof Timestamp at
                                ? at.toInstant().toString()
                                : value instanceof OffsetDateTime at
                                        ? at.toInstant().toString()
                                        : String.valueOf(value);
    }

    private static void compare(
            List<String> faults, String what, JdbcClient.StatementSpec kept, List<? extends List<?>> expected) {
        Set<List<String>> open = new HashSet<>();
        expected.forEach(row -> open.add(row.stream().map(String::valueOf).toList()));
        kept.query(rs -> {
            List<String> row = new ArrayList<>();
            for (int i = 1; i <= rs.getMetaData().getColumnCount(); i++) {
                row.add(text(rs.getObject(i)));
            }
            if (!open.remove(row)) {
                faults.add(what + " is not what the ledger says: " + String.join(", ", row) + ".");
            }
        });
        open.forEach(row -> faults.add(what + " is missing: " + String.join(", ", row) + "."));
    }
}
