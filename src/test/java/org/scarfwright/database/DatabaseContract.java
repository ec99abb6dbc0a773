package org.scarfwright.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** What every room relies on, whichever engine keeps its rows. */
abstract class DatabaseContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    TransactionTemplate transaction;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    JdbcClient jdbc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Flyway flyway;

    /** What {@code select version()} or its like must begin with. */
    abstract String engine();

    abstract String versionQuery();

    @Test
    void runsOnTheEngineItsNameSays() {
        assertThat(jdbc.sql(versionQuery()).query(String.class).single()).startsWith(engine());
    }

    @Test
    void hasRunEveryMigration() {
        assertThat(flyway.info().pending()).isEmpty();
        assertThat(flyway.info().applied()).isNotEmpty();
    }

    @Test
    void checksStillHoldAfterTheConnectionThatMadeThemIsGone() {
        EmptyDatabase.of(flyway);
        assertThatThrownBy(() -> transaction.executeWithoutResult(
                        s -> jdbc.sql("update saw set kind = 'CHAIN'").update()))
                .isInstanceOf(DataIntegrityViolationException.class);
    }
}
