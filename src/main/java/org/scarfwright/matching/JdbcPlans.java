package org.scarfwright.matching;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Rack.PieceStamp;
import org.scarfwright.shop.ShopContents;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.jdbc.support.KeyHolder;
import org.springframework.stereotype.Repository;

/** Rows of plans. Every method belongs into its caller's transaction. */
@Repository
class JdbcPlans implements ShopContents {
    private static final String SELECT = "select id, state, made_at from plan";

    private static final int LAST_ACCEPTED = 50;

    /** Some tens of megabytes: a neck with its layout takes a few kilobytes. */
    private static final int MOST_NECKS = 5_000;

    private final JdbcClient jdbc;

    /** Documents that were read. They never change; only whether a plan holds does, and that is read every time. */
    private final Cache<Document, Plan> documents = Caffeine.newBuilder()
            .maximumWeight(MOST_NECKS)
            .weigher((Document key, Plan plan) -> 1 + plan.ordered())
            .build();

    /** @param madeAt belongs to it because a shop that was read from a file and given up may have had the same id */
    private record Document(long id, Instant madeAt) {}

    JdbcPlans(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public boolean isEmpty() {
        return jdbc.sql("select count(*) from plan").query(Long.class).single() == 0;
    }

    /**
     * @param designs version of every design the plan makes necks of, by code
     * @return the plan with its id
     */
    Plan insert(Plan plan, Map<String, Long> designs) {
        KeyHolder keys = new GeneratedKeyHolder();
        Plan.Origin origin = plan.asked().origin();
        jdbc.sql("insert into plan (week, state, status, made_at, filled, ordered, document, origin_id, origin_kind)"
                        + " values (:week, :state, :status, :madeAt, :filled, :ordered, :document, :origin, :kind)")
                .param("week", plan.week())
                .param("state", plan.state().name())
                .param("status", plan.status().name())
                .param("madeAt", plan.madeAt().atOffset(ZoneOffset.UTC))
                .param("filled", plan.filled())
                .param("ordered", plan.ordered())
                .param("document", PlanDocument.write(plan))
                .param("origin", origin == null ? null : origin.plan())
                .param("kind", origin == null ? null : origin.kind().name())
                .update(keys, "id");
        long id = Objects.requireNonNull(keys.getKey()).longValue();
        for (PieceLayout layout : plan.layouts()) {
            jdbc.sql("insert into plan_piece (plan_id, piece_code, piece_version) values (:plan, :piece, :version)")
                    .param("plan", id)
                    .param("piece", layout.piece())
                    .param("version", layout.pieceVersion())
                    .update();
        }
        designs.forEach((code, version) -> jdbc.sql(
                        "insert into plan_design (plan_id, design_code, design_version) values (:plan, :design, :version)")
                .param("plan", id)
                .param("design", code)
                .param("version", version)
                .update());
        return plan.saved(id, plan.state());
    }

    Optional<Plan> find(long id) {
        return jdbc.sql(SELECT + " where id = :id order by id")
                .param("id", id)
                .query(Row::of)
                .optional()
                .map(this::planOf);
    }

    /** The one made last first. */
    List<Plan> ofWeek(IsoWeek week) {
        return plansOf(jdbc.sql(SELECT + " where week = :week order by id desc")
                .param("week", week.toString())
                .query(Row::of)
                .list());
    }

    /** The one made last first. */
    List<Long> acceptedIn(IsoWeek week) {
        return jdbc.sql("select id from plan where state = 'ACCEPTED' and week = :week order by id desc")
                .param("week", week.toString())
                .query(Long.class)
                .list();
    }

    /** Earliest week first, in each the one made last first. */
    List<Long> acceptedUpTo(IsoWeek week) {
        return jdbc.sql("select id from plan where state = 'ACCEPTED' and week <= :week order by week, id desc")
                .param("week", week.toString())
                .query(Long.class)
                .list();
    }

    Optional<Plan> latest(IsoWeek week) {
        return jdbc.sql(SELECT + " where id = (select max(id) from plan where week = :week) order by id")
                .param("week", week.toString())
                .query(Row::of)
                .optional()
                .map(this::planOf);
    }

    /** Near-equal plans of this one, the one made first in front. */
    List<Plan> nearTo(long origin) {
        return plansOf(jdbc.sql(SELECT + " where origin_id = :origin and origin_kind = 'NEAR_EQUAL' order by id")
                .param("origin", origin)
                .query(Row::of)
                .list());
    }

    /** Plans that come from this one, the one made first in front. */
    List<Plans.Relative> relatives(long origin) {
        return jdbc.sql(
                        "select id, origin_kind, state, filled, ordered from plan where origin_id = :origin order by id")
                .param("origin", origin)
                .query((row, n) -> new Plans.Relative(
                        row.getLong("id"),
                        Plan.OriginKind.valueOf(row.getString("origin_kind")),
                        Plan.State.valueOf(row.getString("state")),
                        row.getInt("filled"),
                        row.getInt("ordered")))
                .list();
    }

    /** Locks the plan until the transaction ends, so that two people's decisions come one after the other. */
    Optional<Plan> lock(long id) {
        return jdbc.sql(SELECT + " where id = :id order by id for update")
                .param("id", id)
                .query(Row::of)
                .optional()
                .map(this::planOf);
    }

    void changeState(long id, Plan.State state) {
        jdbc.sql("update plan set state = :state, version = version + 1 where id = :id")
                .param("state", state.name())
                .param("id", id)
                .update();
    }

    List<PieceStamp> pieces(long id) {
        return jdbc.sql("select piece_code, piece_version from plan_piece where plan_id = :id order by piece_code")
                .param("id", id)
                .query((row, n) -> new PieceStamp(row.getString("piece_code"), row.getLong("piece_version")))
                .list();
    }

    /** Versions by code. */
    Map<String, Long> designs(long id) {
        Map<String, Long> versions = new TreeMap<>();
        jdbc.sql("select design_code, design_version from plan_design where plan_id = :id order by design_code")
                .param("id", id)
                .query(row -> {
                    versions.put(row.getString("design_code"), row.getLong("design_version"));
                });
        return versions;
    }

    /** Which necks of this order accepted plans make. */
    Set<Integer> accepted(String order) {
        return new TreeSet<>(
                jdbc.sql("select neck_number from plan_neck where order_code = :order order by neck_number")
                        .param("order", order)
                        .query(Integer.class)
                        .list());
    }

    /** How many necks of these orders accepted plans make, by order; orders without one are left out. */
    Map<String, Integer> acceptedCounts(Collection<String> orders) {
        Map<String, Integer> counts = new TreeMap<>();
        if (!orders.isEmpty()) {
            jdbc.sql("select order_code, count(*) as made from plan_neck where order_code in (:orders)"
                            + " group by order_code order by order_code")
                    .param("orders", orders)
                    .query(rs -> {
                        counts.put(rs.getString("order_code"), rs.getInt("made"));
                    });
        }
        return counts;
    }

    /** Which of these necks another accepted plan makes, and which plan that is. */
    Map<PlannedNeck, Long> acceptedElsewhere(Collection<PlannedNeck> necks) {
        Map<PlannedNeck, Long> found =
                new TreeMap<>(Comparator.comparing(PlannedNeck::order).thenComparing(PlannedNeck::number));
        necks.forEach(n -> jdbc.sql("select plan_id from plan_neck where order_code = :order and neck_number = :number"
                        + " and plan_id <> :plan order by plan_id")
                .param("order", n.order())
                .param("number", n.number())
                .param("plan", n.plan())
                .query(Long.class)
                .optional()
                .ifPresent(id -> found.put(n, id)));
        return found;
    }

    /** A piece an accepted plan cuts. */
    record Holding(String piece, long plan, String orders) {
        String words() {
            return orders + " (plan " + plan + ")";
        }
    }

    /** Pieces of plans that were accepted last; old ones are cut by now. */
    List<Holding> holdings() {
        List<Holding> holdings = new ArrayList<>();
        plansOf(jdbc.sql(SELECT + " where state = 'ACCEPTED' order by id desc limit " + LAST_ACCEPTED)
                        .query(Row::of)
                        .list())
                .forEach(plan -> {
                    Map<String, Set<String>> orders = new TreeMap<>();
                    held(plan)
                            .forEach(p -> List.of(p.neck(), p.head())
                                    .forEach(part -> orders.computeIfAbsent(part.piece(), k -> new TreeSet<>())
                                            .add(p.order())));
                    orders.forEach(
                            (piece, of) -> holdings.add(new Holding(piece, plan.id(), Words.list(List.copyOf(of)))));
                });
        return holdings;
    }

    /** What an accepted plan makes: its pairings without those that were given up. */
    List<Plan.Pairing> held(Plan plan) {
        Set<PlannedNeck> givenUp = new HashSet<>();
        givenUp(plan.id()).forEach(g -> givenUp.add(g.neck()));
        return plan.pairings().stream()
                .filter(p -> !givenUp.contains(p.of(plan.id())))
                .toList();
    }

    /** In order of their orders. */
    List<Plans.GivenUp> givenUp(long plan) {
        return jdbc.sql("select order_code, neck_number, given_up_at, who, why from given_up_neck"
                        + " where plan_id = :plan order by order_code, neck_number")
                .param("plan", plan)
                .query((row, n) -> new Plans.GivenUp(
                        new PlannedNeck(plan, row.getString("order_code"), row.getInt("neck_number")),
                        row.getObject("given_up_at", OffsetDateTime.class).toInstant(),
                        row.getString("who"),
                        row.getString("why")))
                .list();
    }

    void giveUp(Plans.GivenUp given) {
        jdbc.sql("delete from plan_neck where order_code = :order and neck_number = :number and plan_id = :plan")
                .param("order", given.neck().order())
                .param("number", given.neck().number())
                .param("plan", given.neck().plan())
                .update();
        jdbc.sql("insert into given_up_neck (plan_id, order_code, neck_number, given_up_at, who, why)"
                        + " values (:plan, :order, :number, :at, :who, :why)")
                .param("plan", given.neck().plan())
                .param("order", given.neck().order())
                .param("number", given.neck().number())
                .param("at", given.at().atOffset(ZoneOffset.UTC))
                .param("who", given.who())
                .param("why", given.why())
                .update();
    }

    /** @throws org.springframework.dao.DuplicateKeyException when another accepted plan makes one of these necks */
    void holdNecks(Collection<PlannedNeck> necks) {
        necks.forEach(n -> {
            jdbc.sql(
                            "delete from given_up_neck where order_code = :order and neck_number = :number and plan_id = :plan")
                    .param("order", n.order())
                    .param("number", n.number())
                    .param("plan", n.plan())
                    .update();
            jdbc.sql("insert into plan_neck (order_code, neck_number, plan_id) values (:order, :number, :plan)")
                    .param("order", n.order())
                    .param("number", n.number())
                    .param("plan", n.plan())
                    .update();
        });
    }

    void freeNecks(long id) {
        jdbc.sql("delete from plan_neck where plan_id = :plan")
                .param("plan", id)
                .update();
    }

    /** What a row says of a plan without its document. */
    private record Row(Document document, Plan.State state) {
        static Row of(ResultSet row, int n) throws SQLException {
            return new Row(
                    new Document(
                            row.getLong("id"),
                            row.getObject("made_at", OffsetDateTime.class).toInstant()),
                    Plan.State.valueOf(row.getString("state")));
        }
    }

    private Plan planOf(Row row) {
        Plan plan = documents.getIfPresent(row.document());
        if (plan == null) {
            plan = PlanDocument.read(jdbc.sql("select document from plan where id = :id")
                    .param("id", row.document().id())
                    .query(String.class)
                    .single());
            documents.put(row.document(), plan);
        }
        return plan.saved(row.document().id(), row.state());
    }

    private List<Plan> plansOf(List<Row> rows) {
        return rows.stream().map(this::planOf).toList();
    }
}
