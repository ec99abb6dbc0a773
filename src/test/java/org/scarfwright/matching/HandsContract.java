package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.necks.IsoWeek;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** Rows of decisions by hand, and the limits of a search, whichever engine keeps them. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class HandsContract {
    private static final IsoWeek WEEK = Shelf.WEEK;
    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00.123456Z");

    @Autowired
    JdbcHands rows;

    @Autowired
    JdbcClient jdbc;

    @Test
    void keepsEveryKindAsItWasDecided() {
        List<Hand> all = List.of(
                new Hand.Pin("O-1", "N1", "H1"),
                new Hand.Forbid("N2", null),
                new Hand.Forbid("N2", "O-1"),
                new Hand.ForbidPair("N1", "H2"),
                new Hand.Keep("N3", "O-2"),
                new Hand.Arrange("O-2", Arrangement.OVERLAID, null),
                new Hand.Arrange("O-2", null, Angle.ofDegrees(13)),
                new Hand.Arrange("O-3", Arrangement.UNDERLAID, Angle.ofDegrees(10)),
                new Hand.LeaveOut("O-4"));
        List<Hands.Kept> kept =
                all.stream().map(hand -> rows.insert(WEEK, hand, NOON)).toList();
        assertThat(kept).extracting(Hands.Kept::hand).containsExactlyElementsOf(all);
        assertThat(rows.of(WEEK)).as("read back, in their order").isEqualTo(kept);
        assertThat(rows.of(new IsoWeek(2026, 50))).isEmpty();
    }

    @Test
    void takesBackOnlyTheWeeksOwn() {
        Hands.Kept kept = rows.insert(WEEK, new Hand.LeaveOut("O-1"), NOON);
        assertThat(rows.delete(new IsoWeek(2026, 50), kept.id())).isFalse();
        assertThat(rows.of(WEEK)).containsExactly(kept);
        assertThat(rows.delete(WEEK, kept.id())).isTrue();
        assertThat(rows.delete(WEEK, kept.id())).isFalse();
        assertThat(rows.of(WEEK)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kind, order_code) values ('2026-W49', 'PIN', 'O-1'",
                "kind, order_code, neck_code) values ('2026-W49', 'FORBID_PAIR', null, 'N1'",
                "kind, order_code) values ('2026-W49', 'ARRANGE', 'O-1'",
                "kind) values ('2026-W49', 'LEAVE_OUT'",
                "kind, order_code) values ('2026-W49', 'GLUE', 'O-1'",
                "kind, order_code, angle_mdeg) values ('2026-W49', 'ARRANGE', 'O-1', 90000"
            })
    void refusesARowThatMeansNothing(String row) {
        assertThatThrownBy(() -> jdbc.sql("insert into hand (made_at, week, "
                                + row.replace("values (", "values (timestamp with time zone '2026-11-25 12:00:00+00', ")
                                + ")")
                        .update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"search_seconds = 0", "search_seconds = 601", "search_memory_mb = 63"})
    void refusesLimitsOfASearchNobodyCanKeep(String limit) {
        assertThat(jdbc.sql("select count(*) from shop_settings where search_seconds = 20 and search_memory_mb = 2048")
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
        assertThatThrownBy(() -> jdbc.sql("update shop_settings set " + limit).update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }
}
