package org.scarfwright.browser;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Objects;
import org.scarfwright.ScarfwrightApplication;
import org.scarfwright.database.FreshHome;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;

/** The whole program on a free port, with an empty data folder of its own, a week before the demo shop's orders are made. */
final class StartedProgram implements AutoCloseable {
    private static final Instant WEDNESDAY = Instant.parse("2026-11-25T09:00:00Z");

    private final ConfigurableApplicationContext context;

    private StartedProgram(ConfigurableApplicationContext context) {
        this.context = context;
    }

    static StartedProgram start() {
        ApplicationContextInitializer<ConfigurableApplicationContext> fixedDay = c -> ((GenericApplicationContext) c)
                .registerBean(
                        "fixedClock",
                        Clock.class,
                        () -> Clock.fixed(WEDNESDAY, ZoneOffset.UTC),
                        bean -> bean.setPrimary(true));
        return new StartedProgram(new SpringApplicationBuilder(ScarfwrightApplication.class)
                .initializers(fixedDay)
                .run("--server.port=0", "--scarfwright.home=" + FreshHome.create()));
    }

    /** Without a slash at its end. */
    String address() {
        int port = Objects.requireNonNull(((WebServerApplicationContext) context).getWebServer())
                .getPort();
        return "http://localhost:" + port;
    }

    @Override
    public void close() {
        context.close();
    }
}
