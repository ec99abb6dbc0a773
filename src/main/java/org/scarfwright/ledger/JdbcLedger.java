package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceHistory;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.PiecesChanged;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.AnonymousAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The ledger's rows. There is deliberately nothing here that changes or removes one. */
@Service
class JdbcLedger implements Ledger, PieceHistory {
    private static final int LONGEST_NAME = 120;

    private final JdbcClient jdbc;
    private final NamedParameterJdbcOperations batches;
    private final Pieces pieces;
    private final Clock clock;

    JdbcLedger(JdbcClient jdbc, NamedParameterJdbcOperations batches, Pieces pieces, Clock clock) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.pieces = pieces;
        this.clock = clock;
    }

    /** Writes inside the transaction of whoever did it: an act without its entry, or an entry without its act, cannot be. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    void write(PiecesChanged event) {
        OffsetDateTime at = OffsetDateTime.now(clock);
        String who = who();
        batches.batchUpdate(
                "insert into act (kind, piece_code, volume_before_um3, volume_after_um3, plan_id, acted_at, who, detail)"
                        + " values (:kind, :piece, :before, :after, :plan, :at, :who, :detail)",
                event.changes().stream()
                        .map(c -> new MapSqlParameterSource("kind", c.kind().name())
                                .addValue("piece", c.pieceCode())
                                .addValue(
                                        "before",
                                        new BigDecimal(c.volumeBefore().um3()))
                                .addValue(
                                        "after", new BigDecimal(c.volumeAfter().um3()))
                                .addValue("plan", c.planId())
                                .addValue("at", at)
                                .addValue("who", who)
                                .addValue("detail", c.detail()))
                        .toArray(MapSqlParameterSource[]::new));
    }

    /** Without sign-in everybody is the shop. */
    private static String who() {
        Authentication person = SecurityContextHolder.getContext().getAuthentication();
        if (person == null || person instanceof AnonymousAuthenticationToken || !person.isAuthenticated()) {
            return "the shop";
        }
        String name = person.getName();
        return name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
    }

    @Override
    @Transactional(readOnly = true)
    public ActList acts(@Nullable String pieceCode, int page, int size) {
        int onPage = Math.max(1, Math.min(size, LARGEST_PAGE));
        String code = pieceCode == null
                ? ""
                : pieceCode.strip().toUpperCase(Locale.ROOT).replace("\0", "");
        String where = code.isEmpty() ? "" : " where piece_code = :code";
        long total = jdbc.sql("select count(*) from act" + where)
                .param("code", code)
                .query(Long.class)
                .single();
        int pages = (int) Math.max(1, (total + onPage - 1) / onPage);
        int shown = Math.max(1, Math.min(page, pages));
        List<Act> acts = jdbc.sql("select * from act" + where + " order by id desc limit :most offset :skipped")
                .param("code", code)
                .param("most", onPage)
                .param("skipped", (long) (shown - 1) * onPage)
                .query((rs, n) -> act(rs))
                .list();
        return new ActList(acts, shown, pages, total);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Entry> of(String code) {
        return acts(code, 1, LARGEST_PAGE).acts().stream()
                .map(a -> new Entry(a.at(), a.who(), ActWords.kind(a.kind()), a.detail()))
                .toList();
    }

    /** One snapshot, so that an act between the two sums does not look like a book that does not close. */
    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Balance balance() {
        List<Balance.Line> lines = new ArrayList<>(jdbc.sql("""
                        select kind, count(*) as acts,
                            sum(case when volume_after_um3 > volume_before_um3
                                then volume_after_um3 - volume_before_um3 else 0 end) as came_in,
                            sum(case when volume_before_um3 > volume_after_um3
                                then volume_before_um3 - volume_after_um3 else 0 end) as went_out
                        from act group by kind order by kind
                        """)
                .query((rs, n) -> new Balance.Line(
                        PieceChanged.Kind.valueOf(rs.getString("kind")),
                        rs.getLong("acts"),
                        volume(rs, "came_in"),
                        volume(rs, "went_out")))
                .list());
        lines.sort(Comparator.comparing(Balance.Line::kind));
        return new Balance(lines, pieces.volume());
    }

    private static Act act(ResultSet rs) throws SQLException {
        BigDecimal plan = rs.getBigDecimal("plan_id");
        return new Act(
                rs.getLong("id"),
                PieceChanged.Kind.valueOf(rs.getString("kind")),
                rs.getString("piece_code"),
                volume(rs, "volume_before_um3"),
                volume(rs, "volume_after_um3"),
                plan == null ? null : plan.longValueExact(),
                rs.getObject("acted_at", OffsetDateTime.class).toInstant(),
                rs.getString("who"),
                rs.getString("detail"));
    }

    private static Volume volume(ResultSet rs, String column) throws SQLException {
        return new Volume(rs.getBigDecimal(column).toBigIntegerExact());
    }
}
