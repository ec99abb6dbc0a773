package org.scarfwright.database;

@OnDockerPostgres
class DatabaseDockerPostgresTest extends DatabaseContract {
    @Override
    String engine() {
        return "PostgreSQL 18.";
    }

    @Override
    String versionQuery() {
        return "select version()";
    }
}
