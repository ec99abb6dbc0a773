package org.scarfwright.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;

/** One server for the whole test run, a new database for each context. */
class EmbeddedPostgresContext implements ApplicationContextInitializer<ConfigurableApplicationContext> {
    private static final AtomicInteger COUNT = new AtomicInteger();

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        String name = "scarfwright_" + COUNT.incrementAndGet();
        JdbcClient.create(Server.STARTED.getPostgresDatabase())
                .sql("create database " + name)
                .update();
        TestPropertyValues.of(
                        "scarfwright.home=" + FreshHome.create(),
                        "spring.datasource.url=" + Server.STARTED.getJdbcUrl("postgres", name),
                        "spring.datasource.username=postgres",
                        "spring.datasource.password=postgres")
                .applyTo(context);
    }

    /** Started when the first context asks for it, stopped with the process. */
    private static final class Server {
        static final EmbeddedPostgres STARTED = start();

        private static EmbeddedPostgres start() {
            try {
                return EmbeddedPostgres.builder()
                        .setPGStartupWait(Duration.ofMinutes(2))
                        .start();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
