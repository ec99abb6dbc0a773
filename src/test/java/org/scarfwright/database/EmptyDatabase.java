package org.scarfwright.database;

import org.flywaydb.core.Flyway;

/** Puts the database of a context back to how a new shop finds it, for tests that must commit. */
public final class EmptyDatabase {
    private EmptyDatabase() {}

    /** Drops everything and runs all migrations again. */
    public static void of(Flyway flyway) {
        Flyway cleaning = Flyway.configure()
                .configuration(flyway.getConfiguration())
                .cleanDisabled(false)
                .load();
        cleaning.clean();
        cleaning.migrate();
    }
}
