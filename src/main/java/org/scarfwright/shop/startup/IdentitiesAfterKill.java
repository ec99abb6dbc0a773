package org.scarfwright.shop.startup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.callback.BaseCallback;
import org.flywaydb.core.api.callback.Context;
import org.flywaydb.core.api.callback.Event;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Moves every generated id past those that are taken, before anything is written.
 *
 * <p>H2 hands out ids in blocks and notes the end of a block apart from the rows that use it. The kill test met a process that
 * was killed between the two: the rows were there, the note was not, and after the next start ids were handed out a second time,
 * so that pieces that were right were refused. PostgreSQL keeps both in one log and needs none of this.
 */
@Component
class IdentitiesAfterKill extends BaseCallback {
    private static final Logger log = LoggerFactory.getLogger(IdentitiesAfterKill.class);

    /** Names as the database spells them. */
    private record Identity(String table, String column, long next) {}

    @Override
    public boolean supports(Event event, Context context) {
        return event == Event.AFTER_MIGRATE;
    }

    @Override
    public void handle(Event event, Context context) {
        try {
            if ("H2".equals(context.getConnection().getMetaData().getDatabaseProductName())) {
                moveOn(context.getConnection());
            }
        } catch (SQLException e) {
            throw new FlywayException("The ids of the database could not be checked", e);
        }
    }

    private static void moveOn(Connection connection) throws SQLException {
        for (Identity identity : identities(connection)) {
            try (Statement statement = connection.createStatement()) {
                long taken = 0;
                try (ResultSet max = statement.executeQuery(
                        "select max(\"" + identity.column() + "\") from \"" + identity.table() + "\"")) {
                    if (max.next()) {
                        taken = max.getLong(1);
                    }
                }
                if (taken >= identity.next()) {
                    statement.execute("alter table \"" + identity.table() + "\" alter column \"" + identity.column()
                            + "\" restart with " + (taken + 1));
                    log.info("Ids of {} go on from {}: the last run was ended in between", identity.table(), taken + 1);
                }
            }
        }
    }

    private static List<Identity> identities(Connection connection) throws SQLException {
        List<Identity> found = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("""
                        select table_name, column_name, identity_base from information_schema.columns
                        where table_schema = current_schema and is_identity = 'YES' order by table_name
                        """)) {
            while (rows.next()) {
                found.add(new Identity(rows.getString(1), rows.getString(2), rows.getLong(3)));
            }
        }
        return found;
    }
}
