package org.scarfwright.database;

@OnH2
class DatabaseH2Test extends DatabaseContract {
    @Override
    String engine() {
        return "2.3.232";
    }

    @Override
    String versionQuery() {
        return "select h2version()";
    }
}
