package org.scarfwright.ledger;

import jakarta.annotation.PreDestroy;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.scarfwright.shop.ShopFileRead;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnBooleanProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Goes through the ledger once the program is up and then every night, on a thread of its own, so that nobody waits for it. What is
 * wrong stands on the ledger's page and in the log.
 */
@Component
@ConditionalOnBooleanProperty("scarfwright.ledger.check-by-itself")
class NightlyCheck {
    private static final Logger LOG = LoggerFactory.getLogger(NightlyCheck.class);

    /** When nobody works; choice of this program. */
    private static final LocalTime NIGHT = LocalTime.of(3, 0);

    /** Longer than any ledger takes. */
    private static final Duration LONGEST = Duration.ofHours(12);

    private final Verification verification;
    private final Clock clock;
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread t = new Thread(work, "ledger-check-waits");
        t.setDaemon(true);
        return t;
    });

    NightlyCheck(Verification verification, Clock clock) {
        this.verification = verification;
        this.clock = clock;
    }

    @EventListener(ApplicationReadyEvent.class)
    void begin() {
        thread.execute(this::check);
        plan();
    }

    /** What was known of the ledger before is of another one. */
    @EventListener
    void lookAt(ShopFileRead read) {
        thread.execute(this::check);
    }

    /** Reckoned anew each day, because not every day has 24 hours. */
    private void plan() {
        Instant now = clock.instant();
        ScheduledFuture<?> unused = thread.schedule(
                () -> {
                    check();
                    plan();
                },
                Duration.between(now, next(now.atZone(clock.getZone()))).toMillis(),
                TimeUnit.MILLISECONDS);
    }

    /** The next night after this moment. */
    static Instant next(ZonedDateTime now) {
        ZonedDateTime today = now.toLocalDate().atTime(NIGHT).atZone(now.getZone());
        return (today.isAfter(now)
                        ? today
                        : now.toLocalDate().plusDays(1).atTime(NIGHT).atZone(now.getZone()))
                .toInstant();
    }

    private void check() {
        try {
            Verification.Report report = verification.begin(LONGEST).orElse(null);
            if (report == null) {
                LOG.error("The ledger is still being gone through after {}.", LONGEST);
            } else if (report.isSound()) {
                LOG.info("The ledger is sound: {} entries, {} pieces.", report.entries(), report.pieces());
            } else {
                LOG.error(
                        "The ledger is not sound, {} things do not fit. The first: {}",
                        report.faultCount(),
                        report.faults().get(0));
            }
        } catch (RuntimeException e) {
            // The program goes on without it; the page says when it was last gone through.
            LOG.error("The ledger could not be gone through.", e);
        }
    }

    @PreDestroy
    void stop() {
        thread.shutdownNow();
    }
}
