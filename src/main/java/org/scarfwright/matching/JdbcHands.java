package org.scarfwright.matching;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.necks.IsoWeek;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.jdbc.support.KeyHolder;
import org.springframework.stereotype.Repository;

/** Rows of decisions. Every method belongs into its caller's transaction. */
@Repository
class JdbcHands {
    private final JdbcClient jdbc;

    JdbcHands(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A decision as columns; what a kind does not have is empty. */
    private record Row(
            String kind,
            @Nullable String order,
            @Nullable String neck,
            @Nullable String head,
            @Nullable String arrangement,
            @Nullable Integer angle) {
        static Row of(Hand hand) {
            if (hand instanceof Hand.Pin p) {
                return new Row("PIN", p.order(), p.neck(), p.head(), null, null);
            }
            if (hand instanceof Hand.Forbid f) {
                return new Row("FORBID", f.order(), f.piece(), null, null, null);
            }
            if (hand instanceof Hand.ForbidPair f) {
                return new Row("FORBID_PAIR", null, f.neck(), f.head(), null, null);
            }
            if (hand instanceof Hand.Keep k) {
                return new Row("KEEP", k.order(), k.piece(), null, null, null);
            }
            if (hand instanceof Hand.Arrange a) {
                return new Row(
                        "ARRANGE",
                        a.order(),
                        null,
                        null,
                        a.arrangement() == null ? null : a.arrangement().name(),
                        a.angle() == null ? null : a.angle().millidegrees());
            }
            return new Row("LEAVE_OUT", ((Hand.LeaveOut) hand).order(), null, null, null, null);
        }

        Hand hand() {
            return switch (kind) {
                case "PIN" -> new Hand.Pin(given(order), given(neck), given(head));
                case "FORBID" -> new Hand.Forbid(given(neck), order);
                case "FORBID_PAIR" -> new Hand.ForbidPair(given(neck), given(head));
                case "KEEP" -> new Hand.Keep(given(neck), given(order));
                case "ARRANGE" ->
                    new Hand.Arrange(
                            given(order),
                            arrangement == null ? null : Arrangement.valueOf(arrangement),
                            angle == null ? null : new Angle(angle));
                default -> new Hand.LeaveOut(given(order));
            };
        }

        private static String given(@Nullable String value) {
            return Objects.requireNonNull(value);
        }
    }

    List<Hands.Kept> of(IsoWeek week) {
        return jdbc.sql("select id, kind, order_code, neck_code, head_code, arrangement, angle_mdeg, made_at from hand"
                        + " where week = :week order by id")
                .param("week", week.toString())
                .query((row, n) -> keptOf(row))
                .list();
    }

    Hands.Kept insert(IsoWeek week, Hand hand, Instant at) {
        Row row = Row.of(hand);
        KeyHolder keys = new GeneratedKeyHolder();
        jdbc.sql("insert into hand (week, kind, order_code, neck_code, head_code, arrangement, angle_mdeg, made_at)"
                        + " values (:week, :kind, :order, :neck, :head, :arrangement, :angle, :at)")
                .param("week", week.toString())
                .param("kind", row.kind())
                .param("order", row.order())
                .param("neck", row.neck())
                .param("head", row.head())
                .param("arrangement", row.arrangement())
                .param("angle", row.angle())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update(keys, "id");
        return new Hands.Kept(Objects.requireNonNull(keys.getKey()).longValue(), hand, at);
    }

    boolean delete(IsoWeek week, long id) {
        return jdbc.sql("delete from hand where id = :id and week = :week")
                        .param("id", id)
                        .param("week", week.toString())
                        .update()
                == 1;
    }

    private static Hands.Kept keptOf(ResultSet row) throws SQLException {
        int angle = row.getInt("angle_mdeg");
        boolean noAngle = row.wasNull();
        Row r = new Row(
                row.getString("kind"),
                row.getString("order_code"),
                row.getString("neck_code"),
                row.getString("head_code"),
                row.getString("arrangement"),
                noAngle ? null : angle);
        return new Hands.Kept(
                row.getLong("id"),
                r.hand(),
                row.getObject("made_at", OffsetDateTime.class).toInstant());
    }
}
