package org.scarfwright.shop.startup;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLTransientException;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/**
 * Lets one transaction write at a time: from its first writing statement until it is committed, rolled back or its connection
 * given back. Reading is never held up.
 *
 * <p>For H2 only. Its store saves all tables at a commit of any of them, one table after the other, while other transactions go
 * on changing them; the next save makes up for it. A process killed before the next save leaves another transaction saved by
 * halves with no note to take it back, or hands ids out a second time. With one writer at a time there is no other transaction.
 *
 * <p>Source: the H2 project's issue 2080, where its maintainers describe the save that is not atomic over tables.
 */
final class OneWriterAtATime extends DelegatingDataSource {
    /** Longer than the longest act, a rack's import; a writer that waits longer is told to try again. */
    private static final Duration PATIENCE = Duration.ofMinutes(2);

    private static final Pattern READS =
            Pattern.compile("\\s*(select|values|show|explain|call|set)\\b(?!.*\\bfor\\s+update\\b).*", Pattern.DOTALL);

    private final Semaphore turn = new Semaphore(1, true);
    private final Duration patience;

    OneWriterAtATime(DataSource target) {
        this(target, PATIENCE);
    }

    OneWriterAtATime(DataSource target, Duration patience) {
        super(target);
        this.patience = patience;
    }

    @Override
    public Connection getConnection() throws SQLException {
        return guarded(super.getConnection());
    }

    @Override
    public Connection getConnection(String username, String password) throws SQLException {
        return guarded(super.getConnection(username, password));
    }

    static boolean writes(String sql) {
        return !READS.matcher(sql.toLowerCase(Locale.ROOT)).matches();
    }

    private Connection guarded(Connection connection) {
        Turn mine = new Turn(connection);
        return (Connection) Proxy.newProxyInstance(
                Connection.class.getClassLoader(),
                new Class<?>[] {Connection.class},
                (proxy, method, arguments) -> mine.call(method, arguments));
    }

    /** One connection, and whether it has the turn to write. */
    private final class Turn {
        private final Connection connection;
        private boolean held;

        Turn(Connection connection) {
            this.connection = connection;
        }

        @Nullable
        Object call(Method method, Object @Nullable [] arguments) throws Throwable {
            switch (method.getName()) {
                case "prepareStatement", "prepareCall" -> {
                    if (arguments != null && writes((String) arguments[0])) {
                        take();
                    }
                    return passOn(method, arguments);
                }
                case "commit", "close", "setAutoCommit" -> {
                    try {
                        return passOn(method, arguments);
                    } finally {
                        giveBack();
                    }
                }
                case "rollback" -> {
                    try {
                        return passOn(method, arguments);
                    } finally {
                        if (arguments == null) { // not when only to a savepoint
                            giveBack();
                        }
                    }
                }
                default -> {
                    return passOn(method, arguments);
                }
            }
        }

        private @Nullable Object passOn(Method method, Object @Nullable [] arguments) throws Throwable {
            try {
                return method.invoke(connection, arguments);
            } catch (InvocationTargetException e) {
                throw e.getCause() == null ? e : e.getCause();
            }
        }

        private void take() throws SQLException {
            if (held) {
                return;
            }
            if (connection.getAutoCommit()) {
                throw new SQLException("The program writes inside transactions only");
            }
            try {
                if (!turn.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS)) {
                    throw new SQLTransientException("Other work was being saved for " + patience.toSeconds()
                            + " s without end; nothing of this was saved. Try again.");
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new SQLTransientException(
                        "Interrupted while other work was being saved; nothing of this was saved.", e);
            }
            held = true;
        }

        private void giveBack() {
            if (held) {
                held = false;
                turn.release();
            }
        }
    }
}
