package org.scarfwright.database;

@OnEmbeddedPostgres
class DatabaseEmbeddedPostgresTest extends DatabaseContract {
    @Override
    String engine() {
        return "PostgreSQL 18.";
    }

    @Override
    String versionQuery() {
        return "select version()";
    }
}
