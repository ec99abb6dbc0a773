package org.scarfwright.matching;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.necks.IsoWeek;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.jdbc.support.KeyHolder;
import org.springframework.stereotype.Repository;

/** Rows of searches. Every method belongs into its caller's transaction. */
@Repository
class JdbcRuns {
    private static final int LONGEST_MESSAGE = 2000;
    private static final String SELECT =
            "select id, week, kind, origin_id, state, asked_at, started_at, ended_at, plan_id,"
                    + " message from match_run";

    private final JdbcClient jdbc;

    JdbcRuns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** How a search ended. */
    record End(
            MatchRun.State state,
            @Nullable Long plan,
            @Nullable String message) {}

    /** @param origin the plan it starts from; empty for a week matched anew */
    long insert(IsoWeek week, MatchRun.Kind kind, @Nullable Long origin, Instant at) {
        KeyHolder keys = new GeneratedKeyHolder();
        jdbc.sql("insert into match_run (week, kind, origin_id, state, asked_at)"
                        + " values (:week, :kind, :origin, 'WAITING', :at)")
                .param("week", week.toString())
                .param("kind", kind.name())
                .param("origin", origin)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update(keys, "id");
        return Objects.requireNonNull(keys.getKey()).longValue();
    }

    void started(long id, Instant at) {
        jdbc.sql("update match_run set state = 'RUNNING', started_at = :at where id = :id and state = 'WAITING'")
                .param("id", id)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    void ended(long id, End end, Instant at) {
        String message = end.message();
        jdbc.sql("update match_run set state = :state, ended_at = :at, plan_id = :plan, message = :message"
                        + " where id = :id and state in ('WAITING', 'RUNNING')")
                .param("id", id)
                .param("state", end.state().name())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("plan", end.plan())
                .param(
                        "message",
                        message == null ? null : message.substring(0, Math.min(message.length(), LONGEST_MESSAGE)))
                .update();
    }

    /** What waited or ran when the program ended. */
    int lose(String message, Instant at) {
        return jdbc.sql("update match_run set state = 'LOST', ended_at = :at, message = :message"
                        + " where state in ('WAITING', 'RUNNING')")
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("message", message)
                .update();
    }

    Optional<MatchRun> find(long id) {
        return jdbc.sql(SELECT + " where id = :id order by id")
                .param("id", id)
                .query((row, n) -> runOf(row))
                .optional();
    }

    /** The last search for plans near to this one. */
    Optional<MatchRun> lastNear(long origin) {
        return jdbc.sql(SELECT + " where id = (select max(id) from match_run where origin_id = :origin"
                        + " and kind = 'NEAR_EQUAL') order by id")
                .param("origin", origin)
                .query((row, n) -> runOf(row))
                .optional();
    }

    private static MatchRun runOf(ResultSet row) throws SQLException {
        long plan = row.getLong("plan_id");
        boolean planned = !row.wasNull();
        long origin = row.getLong("origin_id");
        boolean comes = !row.wasNull();
        return new MatchRun(
                row.getLong("id"),
                row.getString("week"),
                MatchRun.Kind.valueOf(row.getString("kind")),
                comes ? origin : null,
                MatchRun.State.valueOf(row.getString("state")),
                Objects.requireNonNull(instant(row, "asked_at")),
                instant(row, "started_at"),
                instant(row, "ended_at"),
                planned ? plan : null,
                row.getString("message"),
                0,
                null,
                0);
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
