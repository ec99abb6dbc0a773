package org.scarfwright.shop.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.SQLTransientException;
import java.sql.Savepoint;
import java.time.Duration;
import org.h2.jdbcx.JdbcConnectionPool;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On rows that do not touch each other, so that the database itself would hold nobody up. */
class OneWriterAtATimeTest {
    private final JdbcConnectionPool pool = JdbcConnectionPool.create("jdbc:h2:mem:turns", "", "");
    private final OneWriterAtATime turns = new OneWriterAtATime(pool, Duration.ofMillis(50));

    @BeforeEach
    void table() throws SQLException {
        try (Connection c = pool.getConnection()) {
            c.createStatement().execute("create table plank (id int primary key)");
        }
    }

    @AfterEach
    void close() throws SQLException {
        try (Connection c = pool.getConnection()) {
            c.createStatement().execute("drop table plank");
        }
        pool.dispose();
    }

    @Test
    void secondWriterIsToldToTryAgainWhileTheFirstHasNotFinished() throws SQLException {
        try (Connection first = transaction();
                Connection second = transaction()) {
            insert(first, 1);
            assertThatThrownBy(() -> insert(second, 2))
                    .isInstanceOf(SQLTransientException.class)
                    .hasMessageContaining("nothing of this was saved. Try again.");
        }
    }

    @Test
    void turnIsGivenBackByCommitAndByRollbackAndByClosing() throws SQLException {
        try (Connection first = transaction();
                Connection second = transaction()) {
            insert(first, 1);
            first.commit();
            insert(second, 2);
            second.rollback();
            Connection third = transaction();
            insert(third, 3);
            third.close();
            insert(first, 4);
            first.commit();
            assertThat(rows(second)).isEqualTo(2);
        }
    }

    @Test
    void goingBackToASavepointKeepsTheTurn() throws SQLException {
        try (Connection first = transaction();
                Connection second = transaction()) {
            insert(first, 1);
            Savepoint here = first.setSavepoint();
            insert(first, 2);
            first.rollback(here);
            assertThatThrownBy(() -> insert(second, 3)).isInstanceOf(SQLTransientException.class);
        }
    }

    @Test
    void readersAreNotHeldUp() throws SQLException {
        try (Connection writer = transaction();
                Connection reader = transaction()) {
            insert(writer, 1);
            assertThat(rows(reader)).isZero();
        }
    }

    @Test
    void refusesToWriteOutsideATransaction() throws SQLException {
        try (Connection loose = turns.getConnection()) {
            assertThatThrownBy(() -> insert(loose, 1)).hasMessageContaining("inside transactions only");
            assertThat(rows(loose)).isZero();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "insert into plank values (1)",
                " UPDATE plank set id = 2",
                "delete from plank",
                "select id from plank where id = 1 for update",
                "\n  Select id from plank\n  FOR  UPDATE"
            })
    void countsAsWriting(String sql) {
        assertThat(OneWriterAtATime.writes(sql)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "select id from plank",
                "\n SELECT count(*)\nfrom plank",
                "values (1)",
                "call schema()",
                "set schema public"
            })
    void countsAsReading(String sql) {
        assertThat(OneWriterAtATime.writes(sql)).isFalse();
    }

    private Connection transaction() throws SQLException {
        Connection connection = turns.getConnection();
        connection.setAutoCommit(false);
        return connection;
    }

    private static void insert(Connection connection, int id) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("insert into plank values (?)")) {
            insert.setInt(1, id);
            insert.executeUpdate();
        }
    }

    private static int rows(Connection connection) throws SQLException {
        try (PreparedStatement count = connection.prepareStatement("select count(*) from plank");
                ResultSet found = count.executeQuery()) {
            found.next();
            return found.getInt(1);
        }
    }
}
