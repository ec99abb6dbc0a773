package org.scarfwright.database;

import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/** One container for the whole test run, a new database for each context. */
class DockerPostgresContext implements ApplicationContextInitializer<ConfigurableApplicationContext> {
    private static final String IMAGE = "postgres:18";
    private static final AtomicInteger COUNT = new AtomicInteger();

    static boolean engineRuns() {
        return DockerClientFactory.instance().isDockerAvailable();
    }

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        String name = "scarfwright_" + COUNT.incrementAndGet();
        PostgreSQLContainer server = Server.STARTED;
        JdbcClient.create(new DriverManagerDataSource(server.getJdbcUrl(), server.getUsername(), server.getPassword()))
                .sql("create database " + name)
                .update();
        TestPropertyValues.of(
                        "scarfwright.home=" + FreshHome.create(),
                        "scarfwright.ledger.check-by-itself=false",
                        "spring.datasource.url=jdbc:postgresql://" + server.getHost() + ":"
                                + server.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT) + "/" + name,
                        "spring.datasource.username=" + server.getUsername(),
                        "spring.datasource.password=" + server.getPassword())
                .applyTo(context);
    }

    /** Started when the first context asks for it; removed with the process by the container library. */
    private static final class Server {
        static final PostgreSQLContainer STARTED = start();

        private static PostgreSQLContainer start() {
            PostgreSQLContainer container = new PostgreSQLContainer(IMAGE);
            container.start();
            return container;
        }
    }
}
