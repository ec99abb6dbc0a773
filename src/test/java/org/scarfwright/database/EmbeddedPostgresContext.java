package org.scarfwright.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** One server for the whole test run, a new database for each context. */
class EmbeddedPostgresContext implements ApplicationContextInitializer<ConfigurableApplicationContext> {
    private static final AtomicInteger COUNT = new AtomicInteger();
    private static final String USER = "postgres";

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        String name = "scarfwright_" + COUNT.incrementAndGet();
        JdbcClient.create(new DriverManagerDataSource(Server.URL_OF.apply(USER), USER, USER))
                .sql("create database " + name)
                .update();
        TestPropertyValues.of(
                        "scarfwright.home=" + FreshHome.create(),
                        "scarfwright.ledger.check-by-itself=false",
                        "spring.datasource.url=" + Server.URL_OF.apply(name),
                        "spring.datasource.username=" + USER,
                        "spring.datasource.password=" + USER)
                .applyTo(context);
    }

    /** Started when the first context asks for it, stopped with the process. */
    private static final class Server {
        /** The address of a database by its name. */
        static final UnaryOperator<String> URL_OF = start();

        private static UnaryOperator<String> start() {
            try {
                if (RootPostgres.isNeeded()) {
                    return RootPostgres.start()::url;
                }
                EmbeddedPostgres server = EmbeddedPostgres.builder()
                        .setPGStartupWait(Duration.ofMinutes(2))
                        .start();
                return name -> server.getJdbcUrl(USER, name);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }
}
