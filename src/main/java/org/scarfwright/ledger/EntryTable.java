package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.StoredEntry.StoredAct;
import org.scarfwright.ledger.StoredEntry.StoredOutcome;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The ledger's rows. There is deliberately nothing here that changes or removes one. */
@Repository
class EntryTable {
    private final JdbcClient jdbc;
    private final NamedParameterJdbcOperations batches;
    private final YieldBook yields;

    EntryTable(JdbcClient jdbc, NamedParameterJdbcOperations batches, YieldBook yields) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.yields = yields;
    }

    /** The end of the chain. */
    record Head(long entry, String hash) {}

    /** What is to be written, but for its place in the chain. */
    record Draft(
            PieceChanged.Kind kind,
            Instant at,
            String who,
            String why,
            @Nullable Long undoes,
            List<DraftAct> acts,
            List<Outcome> outcomes) {}

    /** An act with the state of its piece afterwards; null when nobody knows it any more. */
    record DraftAct(PieceChanged change, @Nullable String document) {}

    /** Locks the end of the chain until the transaction ends: everybody else who writes an entry waits. */
    Head lockHead() {
        return jdbc.sql("select entry_id, hash from ledger_head where id = 1 for update")
                .query((rs, n) -> new Head(rs.getLong("entry_id"), rs.getString("hash")))
                .single();
    }

    Head head() {
        return jdbc.sql("select entry_id, hash from ledger_head where id = 1")
                .query((rs, n) -> new Head(rs.getLong("entry_id"), rs.getString("hash")))
                .single();
    }

    Optional<String> hash(long entry) {
        return jdbc.sql("select hash from entry where id = :id")
                .param("id", entry)
                .query(String.class)
                .optional();
    }

    /** Codes of the pieces later entries touched. */
    Set<String> touchedAfter(long entry) {
        return new TreeSet<>(jdbc.sql("select piece_code from act where entry_id > :entry order by entry_id, position")
                .param("entry", entry)
                .query(String.class)
                .list());
    }

    /** Where the next so many entries end; empty when there is none after this one. */
    OptionalLong nextEnd(long after, int most) {
        return jdbc
                .sql("select id from entry where id > :after order by id limit :most")
                .param("after", after)
                .param("most", most)
                .query(Long.class)
                .list()
                .stream()
                .mapToLong(Long::longValue)
                .max();
    }

    /** @return the new end of the chain */
    Head append(Head head, Draft draft) {
        StoredEntry open = stored(head, draft);
        String hash = open.reckoned();
        jdbc.sql("insert into entry (id, kind, acted_at, who, why, undoes, prev_hash, hash)"
                        + " values (:id, :kind, :at, :who, :why, :undoes, :prev, :hash)")
                .param("id", open.id())
                .param("kind", open.kind())
                .param("at", open.at().atOffset(ZoneOffset.UTC))
                .param("who", open.who())
                .param("why", open.why())
                .param("undoes", open.undoes())
                .param("prev", open.prevHash())
                .param("hash", hash)
                .update();
        batch(
                "insert into act (entry_id, position, kind, piece_code, volume_before_um3, volume_after_um3, plan_id,"
                        + " detail, document) values (:entry, :position, :kind, :piece, :before, :after, :plan, :detail,"
                        + " :document)",
                open.acts().stream().map(a -> row(open.id(), a)).toList());
        batch(
                "insert into outcome (entry_id, position, kind, cause, from_piece, to_piece, volume_um3, planned_um3,"
                        + " cost_cents, plan_id, order_code, neck_number, design_code, part, length_um, width_um,"
                        + " thickness_um) values (:entry, :position, :kind, :cause, :from, :to, :volume, :planned, :cost,"
                        + " :plan, :order, :number, :design, :part, :length, :width, :thickness)",
                open.outcomes().stream().map(o -> row(open.id(), o)).toList());
        addToBalance(open.acts());
        jdbc.sql("update ledger_head set entry_id = :entry, hash = :hash where id = 1")
                .param("entry", open.id())
                .param("hash", hash)
                .update();
        yields.add(open);
        return new Head(open.id(), hash);
    }

    private static StoredEntry stored(Head head, Draft draft) {
        List<StoredAct> acts = new ArrayList<>();
        for (DraftAct act : draft.acts()) {
            PieceChanged c = act.change();
            acts.add(new StoredAct(
                    acts.size() + 1,
                    c.kind().name(),
                    c.pieceCode(),
                    c.volumeBefore().um3(),
                    c.volumeAfter().um3(),
                    c.planId(),
                    c.detail(),
                    act.document()));
        }
        List<StoredOutcome> outcomes = new ArrayList<>();
        for (Outcome o : draft.outcomes()) {
            outcomes.add(stored(outcomes.size() + 1, o));
        }
        return new StoredEntry(
                head.entry() + 1,
                draft.kind().name(),
                draft.at(),
                draft.who(),
                draft.why(),
                draft.undoes(),
                head.hash(),
                "",
                acts,
                outcomes);
    }

    private static StoredOutcome stored(int position, Outcome o) {
        Outcome.NeckPart neck = o.neck();
        Outcome.Size size = o.size();
        return new StoredOutcome(
                position,
                o.kind().name(),
                o.cause() == null ? null : o.cause().name(),
                o.fromPiece(),
                o.toPiece(),
                o.volume().um3(),
                o.planned() == null ? null : o.planned().um3(),
                o.cost() == null ? null : o.cost().cents(),
                neck == null ? null : neck.plan(),
                neck == null ? null : neck.order(),
                neck == null ? null : neck.number(),
                neck == null ? null : neck.design(),
                neck == null ? null : neck.head() ? "HEAD" : "NECK",
                size == null ? null : size.length().um(),
                size == null ? null : size.width().um(),
                size == null ? null : size.thickness().um());
    }

    private static MapSqlParameterSource row(long entry, StoredAct a) {
        return new MapSqlParameterSource("entry", entry)
                .addValue("position", a.position())
                .addValue("kind", a.kind())
                .addValue("piece", a.piece())
                .addValue("before", new BigDecimal(a.before()))
                .addValue("after", new BigDecimal(a.after()))
                .addValue("plan", a.plan())
                .addValue("detail", a.detail())
                .addValue("document", a.document());
    }

    private static MapSqlParameterSource row(long entry, StoredOutcome o) {
        return new MapSqlParameterSource("entry", entry)
                .addValue("position", o.position())
                .addValue("kind", o.kind())
                .addValue("cause", o.cause())
                .addValue("from", o.from())
                .addValue("to", o.to())
                .addValue("volume", new BigDecimal(o.volume()))
                .addValue("planned", o.planned() == null ? null : new BigDecimal(o.planned()))
                .addValue("cost", o.cost())
                .addValue("plan", o.plan())
                .addValue("order", o.order())
                .addValue("number", o.number())
                .addValue("design", o.design())
                .addValue("part", o.part())
                .addValue("length", o.length())
                .addValue("width", o.width())
                .addValue("thickness", o.thickness());
    }

    private void batch(String sql, List<MapSqlParameterSource> rows) {
        if (!rows.isEmpty()) {
            batches.batchUpdate(sql, rows.toArray(MapSqlParameterSource[]::new));
        }
    }

    private void addToBalance(List<StoredAct> acts) {
        Map<PieceChanged.Kind, Sum> sums = new EnumMap<>(PieceChanged.Kind.class);
        acts.forEach(a -> sums.computeIfAbsent(PieceChanged.Kind.valueOf(a.kind()), k -> new Sum())
                .add(a.change()));
        sums.forEach((kind, sum) -> {
            Map<String, Object> values = Map.of(
                    "kind",
                    kind.name(),
                    "acts",
                    sum.acts,
                    "in",
                    new BigDecimal(sum.in),
                    "out",
                    new BigDecimal(sum.out));
            int rows = jdbc.sql("update balance_line set acts = acts + :acts, in_um3 = in_um3 + :in,"
                            + " out_um3 = out_um3 + :out where kind = :kind")
                    .params(values)
                    .update();
            if (rows == 0) {
                jdbc.sql("insert into balance_line (kind, acts, in_um3, out_um3) values (:kind, :acts, :in, :out)")
                        .params(values)
                        .update();
            }
        });
    }

    /** What some acts brought in and took out. */
    static final class Sum {
        private long acts;
        private BigInteger in = BigInteger.ZERO;
        private BigInteger out = BigInteger.ZERO;

        void add(BigInteger change) {
            acts++;
            if (change.signum() > 0) {
                in = in.add(change);
            } else {
                out = out.subtract(change);
            }
        }

        Balance.Line line(PieceChanged.Kind kind) {
            return new Balance.Line(kind, acts, new Volume(in), new Volume(out));
        }
    }

    /** In the order of the kinds. */
    List<Balance.Line> balance() {
        return jdbc
                .sql("select kind, acts, in_um3, out_um3 from balance_line order by kind")
                .query((rs, n) -> new Balance.Line(
                        PieceChanged.Kind.valueOf(rs.getString("kind")),
                        rs.getLong("acts"),
                        volume(rs, "in_um3"),
                        volume(rs, "out_um3")))
                .list()
                .stream()
                .sorted(Comparator.comparing(Balance.Line::kind))
                .toList();
    }

    long count(String piece) {
        return piece.isEmpty()
                ? balance().stream().mapToLong(Balance.Line::acts).sum()
                : jdbc.sql("select count(*) from act where piece_code = :piece")
                        .param("piece", piece)
                        .query(Long.class)
                        .single();
    }

    /**
     * Acts older than a place, the newest first, or newer than it, the oldest first. Only then is what they belong to looked up:
     * the two tables joined would be sorted whole.
     */
    List<Act> acts(String piece, Ledger.From from, int most) {
        List<Row> rows = jdbc.sql("select entry_id, position, kind, piece_code, volume_before_um3, volume_after_um3,"
                        + " plan_id, detail from act where "
                        + (piece.isEmpty() ? "" : "piece_code = :piece and ")
                        + (from.older()
                                ? "entry_id <= :entry and (entry_id < :entry or position < :position)"
                                        + " order by entry_id desc, position desc"
                                : "entry_id >= :entry and (entry_id > :entry or position > :position)"
                                        + " order by entry_id, position")
                        + " limit :most")
                .param("piece", piece)
                .param("entry", from.spot().entry())
                .param("position", from.spot().position())
                .param("most", most)
                .query((rs, n) -> new Row(rs.getLong("entry_id"), act(rs, Instant.EPOCH, "")))
                .list();
        if (rows.isEmpty()) {
            return List.of();
        }
        Map<Long, Made> made = new HashMap<>();
        jdbc.sql("select id, acted_at, who from entry where id in (:ids) order by id")
                .param("ids", rows.stream().map(Row::entry).distinct().toList())
                .query(rs -> {
                    made.put(rs.getLong("id"), new Made(moment(rs), rs.getString("who")));
                });
        return rows.stream()
                .map(r -> r.act()
                        .by(
                                Objects.requireNonNull(made.get(r.entry())).at(),
                                Objects.requireNonNull(made.get(r.entry())).who()))
                .toList();
    }

    private record Row(long entry, Act act) {}

    private record Made(Instant at, String who) {}

    /** The first entry from a moment on. */
    Optional<Long> firstFrom(Instant moment) {
        return jdbc.sql("select id from entry where acted_at >= :moment order by acted_at, id limit 1")
                .param("moment", moment.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .optional();
    }

    Optional<Entry> entry(long id) {
        List<Outcome> outcomes = jdbc.sql("select * from outcome where entry_id = :id order by position")
                .param("id", id)
                .query((rs, n) -> outcome(rs))
                .list();
        return jdbc.sql(
                        "select e.*, u.id as undone_by from entry e left join entry u on u.undoes = e.id where e.id = :id")
                .param("id", id)
                .query((rs, n) -> {
                    Instant at = moment(rs);
                    String who = rs.getString("who");
                    return new Entry(
                            rs.getLong("id"),
                            PieceChanged.Kind.valueOf(rs.getString("kind")),
                            at,
                            who,
                            rs.getString("why"),
                            number(rs, "undoes"),
                            number(rs, "undone_by"),
                            rs.getString("hash"),
                            actsOf(id, at, who),
                            outcomes);
                })
                .optional();
    }

    private List<Act> actsOf(long entry, Instant at, String who) {
        return jdbc.sql("select * from act where entry_id = :entry order by position")
                .param("entry", entry)
                .query((rs, n) -> act(rs, at, who))
                .list();
    }

    /**
     * An entry that came after another one on a piece.
     *
     * @param undoes 0 when it takes nothing back
     */
    record Later(long entry, String piece, long undoes) {}

    /** Entries after one that touched one of these pieces, the newest first. */
    List<Later> later(List<String> pieces, long entry) {
        List<Later> found = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i += 1000) {
            found.addAll(jdbc.sql(
                            "select distinct a.entry_id, a.piece_code, e.undoes from act a"
                                    + " join entry e on e.id = a.entry_id"
                                    + " where a.piece_code in (:pieces) and a.entry_id > :entry order by a.entry_id desc, a.piece_code")
                    .param("pieces", pieces.subList(i, Math.min(pieces.size(), i + 1000)))
                    .param("entry", entry)
                    .query((rs, n) ->
                            new Later(rs.getLong("entry_id"), rs.getString("piece_code"), rs.getLong("undoes")))
                    .list());
        }
        return found.stream()
                .sorted(Comparator.comparing(Later::entry).reversed())
                .toList();
    }

    /** The state of a piece before an entry; empty when it had none yet, or when nobody knows it any more. */
    Optional<Before> before(String piece, long entry) {
        return jdbc.sql("select document from act where piece_code = :piece and entry_id < :entry"
                        + " order by entry_id desc, position desc limit 1")
                .param("piece", piece)
                .param("entry", entry)
                .query((rs, n) -> new Before(rs.getString("document")))
                .optional();
    }

    /** @param document null: nobody knows it any more */
    record Before(@Nullable String document) {}

    /** Parts that were cut from a piece for a plan and not taken back, as order, number and part, such as A-101 2 NECK. */
    Set<String> cutParts(String piece, long plan) {
        return new HashSet<>(jdbc.sql(
                        "select order_code, neck_number, part from outcome where from_piece = :piece and plan_id = :plan"
                                + " and order_code is not null group by order_code, neck_number, part"
                                + " having sum(volume_um3) > 0 order by order_code, neck_number, part")
                .param("piece", piece)
                .param("plan", plan)
                .query((rs, n) ->
                        rs.getString("order_code") + " " + rs.getInt("neck_number") + " " + rs.getString("part"))
                .list());
    }

    /** What is recorded of the parts of a neck, in the order it was written. */
    List<Outcome> ofNeck(long plan, String order, int number) {
        return jdbc.sql("select * from outcome where plan_id = :plan and order_code = :order and neck_number = :number"
                        + " order by entry_id, position")
                .param("plan", plan)
                .param("order", order)
                .param("number", number)
                .query((rs, n) -> outcome(rs))
                .list();
    }

    /**
     * What stands of what was recorded: outcomes of one kind, of one neck or one rest, added up over what was taken back.
     *
     * @param entry the last that wrote of it
     */
    record Became(long entry, Outcome outcome) {}

    private static final String STANDING =
            "select max(entry_id) as entry_id, kind, max(cause) as cause, from_piece, to_piece,"
                    + " sum(volume_um3) as volume_um3, sum(planned_um3) as planned_um3, sum(cost_cents) as cost_cents,"
                    + " max(plan_id) as plan_id, order_code, neck_number, max(design_code) as design_code, part,"
                    + " max(length_um) as length_um, max(width_um) as width_um, max(thickness_um) as thickness_um, 1 as position"
                    + " from outcome where ";

    private static final String GROUPED =
            " group by kind, from_piece, to_piece, order_code, neck_number, part having sum(volume_um3) > 0"
                    + " order by kind, order_code, neck_number, part, to_piece, from_piece";

    List<Became> becameNeck(Losses.Neck neck) {
        return jdbc.sql(STANDING + "plan_id = :plan and order_code = :order and neck_number = :number" + GROUPED)
                .param("plan", neck.plan())
                .param("order", neck.order())
                .param("number", neck.number())
                .query((rs, n) -> new Became(rs.getLong("entry_id"), outcome(rs)))
                .list();
    }

    /** Parts, spoilt parts and rests of a piece. */
    List<Became> becameOf(String piece) {
        return jdbc.sql(STANDING + "from_piece = :piece and (order_code is not null or to_piece is not null)" + GROUPED)
                .param("piece", piece)
                .query((rs, n) -> new Became(rs.getLong("entry_id"), outcome(rs)))
                .list();
    }

    /** All that was taken from a piece. */
    Volume taken(String piece) {
        return jdbc.sql("select coalesce(sum(volume_um3), 0) as volume_um3 from outcome where from_piece = :piece")
                .param("piece", piece)
                .query((rs, n) -> volume(rs, "volume_um3"))
                .single();
    }

    /** The piece this one was cut from. */
    Optional<String> parent(String piece) {
        return jdbc
                .sql("select from_piece from outcome where to_piece = :piece group by from_piece"
                        + " having sum(volume_um3) > 0 order by from_piece")
                .param("piece", piece)
                .query(String.class)
                .list()
                .stream()
                .findFirst();
    }

    /** Entries of this person that came after one. */
    long since(String who, long entry) {
        return jdbc.sql("select count(*) from entry where who = :who and id > :entry")
                .param("who", who)
                .param("entry", entry)
                .query(Long.class)
                .single();
    }

    /** Exactly as they are stored, from one number to another, in order; numbers that do not exist are left out. */
    List<StoredEntry> stored(long from, long to) {
        Map<Long, List<StoredAct>> acts = new HashMap<>();
        jdbc.sql("select * from act where entry_id between :from and :to order by entry_id, position")
                .param("from", from)
                .param("to", to)
                .query(rs -> {
                    acts.computeIfAbsent(rs.getLong("entry_id"), id -> new ArrayList<>())
                            .add(new StoredAct(
                                    rs.getInt("position"),
                                    rs.getString("kind"),
                                    rs.getString("piece_code"),
                                    whole(rs, "volume_before_um3"),
                                    whole(rs, "volume_after_um3"),
                                    number(rs, "plan_id"),
                                    rs.getString("detail"),
                                    rs.getString("document")));
                });
        Map<Long, List<StoredOutcome>> outcomes = new HashMap<>();
        jdbc.sql("select * from outcome where entry_id between :from and :to order by entry_id, position")
                .param("from", from)
                .param("to", to)
                .query(rs -> {
                    outcomes.computeIfAbsent(rs.getLong("entry_id"), id -> new ArrayList<>())
                            .add(storedOutcome(rs));
                });
        return jdbc.sql("select * from entry where id between :from and :to order by id")
                .param("from", from)
                .param("to", to)
                .query((rs, n) -> new StoredEntry(
                        rs.getLong("id"),
                        rs.getString("kind"),
                        moment(rs),
                        rs.getString("who"),
                        rs.getString("why"),
                        number(rs, "undoes"),
                        rs.getString("prev_hash"),
                        rs.getString("hash"),
                        acts.getOrDefault(rs.getLong("id"), List.of()),
                        outcomes.getOrDefault(rs.getLong("id"), List.of())))
                .list();
    }

    private static StoredOutcome storedOutcome(ResultSet rs) throws SQLException {
        BigDecimal planned = rs.getBigDecimal("planned_um3");
        Long neck = number(rs, "neck_number");
        return new StoredOutcome(
                rs.getInt("position"),
                rs.getString("kind"),
                rs.getString("cause"),
                rs.getString("from_piece"),
                rs.getString("to_piece"),
                whole(rs, "volume_um3"),
                planned == null ? null : planned.toBigIntegerExact(),
                number(rs, "cost_cents"),
                number(rs, "plan_id"),
                rs.getString("order_code"),
                neck == null ? null : Math.toIntExact(neck),
                rs.getString("design_code"),
                rs.getString("part"),
                number(rs, "length_um"),
                number(rs, "width_um"),
                number(rs, "thickness_um"));
    }

    static Outcome outcome(ResultSet rs) throws SQLException {
        StoredOutcome o = storedOutcome(rs);
        return new Outcome(
                Outcome.Kind.valueOf(o.kind()),
                o.cause() == null ? null : Outcome.Cause.valueOf(o.cause()),
                o.from(),
                o.to(),
                new Volume(o.volume()),
                o.planned() == null ? null : new Volume(o.planned()),
                o.cost() == null ? null : new Money(o.cost()),
                o.order() == null || o.number() == null || o.plan() == null
                        ? null
                        : new Outcome.NeckPart(
                                o.plan(),
                                o.order(),
                                o.number(),
                                o.design() == null ? "" : o.design(),
                                "HEAD".equals(o.part())),
                o.length() == null || o.width() == null || o.thickness() == null
                        ? null
                        : new Outcome.Size(
                                Length.ofUm(o.length()), Length.ofUm(o.width()), Length.ofUm(o.thickness())));
    }

    private static Act act(ResultSet rs, Instant at, String who) throws SQLException {
        return new Act(
                rs.getLong("entry_id"),
                rs.getInt("position"),
                PieceChanged.Kind.valueOf(rs.getString("kind")),
                rs.getString("piece_code"),
                volume(rs, "volume_before_um3"),
                volume(rs, "volume_after_um3"),
                number(rs, "plan_id"),
                at,
                who,
                rs.getString("detail"));
    }

    static Instant moment(ResultSet rs) throws SQLException {
        return rs.getObject("acted_at", OffsetDateTime.class).toInstant();
    }

    static @Nullable Long number(ResultSet rs, String column) throws SQLException {
        long value = rs.getLong(column);
        return rs.wasNull() ? null : value;
    }

    private static BigInteger whole(ResultSet rs, String column) throws SQLException {
        return rs.getBigDecimal(column).toBigIntegerExact();
    }

    private static Volume volume(ResultSet rs, String column) throws SQLException {
        return new Volume(whole(rs, column));
    }
}
