package org.scarfwright.browser;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
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
    private final SetClock clock;

    private StartedProgram(ConfigurableApplicationContext context, SetClock clock) {
        this.context = context;
        this.clock = clock;
    }

    /** A clock that stands until it is set. */
    private static final class SetClock extends Clock {
        private volatile Instant now = WEDNESDAY;

        @Override
        public Instant instant() {
            return now;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return Clock.fixed(now, zone);
        }
    }

    /** Sets the program's clock, in UTC. */
    void now(Instant instant) {
        clock.now = instant;
    }

    static StartedProgram start() {
        SetClock clock = new SetClock();
        ApplicationContextInitializer<ConfigurableApplicationContext> fixedDay = c -> ((GenericApplicationContext) c)
                .registerBean("fixedClock", Clock.class, () -> clock, bean -> bean.setPrimary(true));
        return new StartedProgram(
                new SpringApplicationBuilder(ScarfwrightApplication.class)
                        .initializers(fixedDay)
                        .run("--server.port=0", "--scarfwright.home=" + FreshHome.create()),
                clock);
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
