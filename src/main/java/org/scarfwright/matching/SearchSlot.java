package org.scarfwright.matching;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.springframework.stereotype.Component;

/** The one place a search runs in: a search takes every core it gets, so two at once would only hold each other up. */
@Component
class SearchSlot {
    private final Semaphore free = new Semaphore(1, true);

    void take() {
        free.acquireUninterruptibly();
    }

    /** @return false when it was not free in time */
    boolean takeWithin(Duration patience) {
        try {
            return free.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    void leave() {
        free.release();
    }
}
