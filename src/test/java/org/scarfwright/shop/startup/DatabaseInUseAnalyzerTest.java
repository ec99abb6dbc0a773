package org.scarfwright.shop.startup;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.springframework.boot.diagnostics.FailureAnalysis;

class DatabaseInUseAnalyzerTest {
    private final DatabaseInUseAnalyzer analyzer = new DatabaseInUseAnalyzer();

    @Test
    void findsTheLockBelowOtherFailures() {
        SQLException locked = new SQLException("Database may be already in use", "90020", 90020);
        FailureAnalysis analysis = Objects.requireNonNull(
                analyzer.analyze(new IllegalStateException(new SQLException("no connection", locked))));
        assertThat(analysis.getDescription()).contains("already running on this data folder");
        assertThat(analysis.getAction()).contains("--scarfwright.home=").contains("--server.port=");
    }

    @Test
    void leavesOtherDatabaseErrorsToOthers() {
        assertThat(analyzer.analyze(new IllegalStateException(new SQLException("disk full", "90028", 90028))))
                .isNull();
    }
}
