package org.scarfwright.shop.startup;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** A second start on the same data folder: H2 keeps a lock on its file for as long as a program has it open. */
class DatabaseInUseAnalyzer extends AbstractFailureAnalyzer<SQLException> {
    /** H2's DATABASE_ALREADY_OPEN_1; the driver is not there at compile time. */
    private static final int ALREADY_OPEN = 90020;

    @Override
    protected @Nullable FailureAnalysis analyze(Throwable rootFailure, SQLException cause) {
        for (Throwable t = cause; t != null; t = t.getCause()) {
            if (t instanceof SQLException s && s.getErrorCode() == ALREADY_OPEN) {
                return new FailureAnalysis(
                        "The shop's data are in use: Scarfwright is already running on this data folder.",
                        "Use the program that runs, or stop it first. To run a second shop beside it, start with another "
                                + "folder and port: --scarfwright.home=./second-shop --server.port=8418",
                        cause);
            }
        }
        return null;
    }
}
