package org.scarfwright.week;

import jakarta.annotation.PreDestroy;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/** Looks on for a better schedule after one is shown, so that nobody waits for it. One at a time; a newer one ends the older. */
@Component
class LongerSearch {
    private static final Logger LOG = LoggerFactory.getLogger(LongerSearch.class);

    private final Executor worker;
    private final AtomicReference<@Nullable AtomicBoolean> running = new AtomicReference<>();

    @Autowired
    LongerSearch() {
        this(Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task, "week-search");
            thread.setDaemon(true);
            return thread;
        }));
    }

    LongerSearch(Executor worker) {
        this.worker = worker;
    }

    /** @param search is told whether it was ended */
    void begin(Consumer<BooleanSupplier> search) {
        AtomicBoolean ended = new AtomicBoolean();
        end(running.getAndSet(ended));
        worker.execute(() -> {
            try {
                if (!ended.get()) {
                    search.accept(ended::get);
                }
            } catch (RuntimeException e) {
                // The schedule that is shown holds all the same.
                LOG.warn("The search for a better schedule of the week failed", e);
            } finally {
                running.compareAndSet(ended, null);
            }
        });
    }

    boolean isRunning() {
        return running.get() != null;
    }

    /** Ends the search; what it found by then is not taken. */
    void end() {
        end(running.getAndSet(null));
    }

    private static void end(@Nullable AtomicBoolean search) {
        if (search != null) {
            search.set(true);
        }
    }

    @PreDestroy
    void close() {
        end();
        if (worker instanceof ExecutorService service) {
            service.shutdown();
        }
    }
}
