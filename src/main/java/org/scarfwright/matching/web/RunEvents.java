package org.scarfwright.matching.web;

import java.io.IOException;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.web.ConflictException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** Tells browsers how a search goes, on a thread of its own, so that a slow reader never holds up the search. */
@Component
class RunEvents {
    private static final Logger log = LoggerFactory.getLogger(RunEvents.class);
    private static final int MOST_LISTENERS = 100;
    private static final long EVERY_MILLIS = 500;
    /** Something is sent at least this often, so that whatever stands between does not think the line is dead. */
    private static final long SILENT_TURNS = 20;

    private final MatchRuns runs;
    private final Set<Listener> listeners = ConcurrentHashMap.newKeySet();
    private final ScheduledThreadPoolExecutor teller = new ScheduledThreadPoolExecutor(1, work -> {
        Thread thread = new Thread(work, "match-events");
        thread.setDaemon(true);
        return thread;
    });

    RunEvents(MatchRuns runs) {
        this.runs = runs;
    }

    SseEmitter of(MatchRun run) {
        if (listeners.size() >= MOST_LISTENERS) {
            throw new ConflictException("Too many pages listen already; ask for the search itself instead.");
        }
        Listener listener = new Listener(run.id());
        listeners.add(listener);
        listener.emitter.onCompletion(() -> listeners.remove(listener));
        listener.emitter.onTimeout(listener.emitter::complete);
        listener.tellAgain(0);
        return listener.emitter;
    }

    /** One page that listens. */
    private final class Listener {
        private final long id;
        private final SseEmitter emitter = new SseEmitter(0L);
        private @Nullable RunJson told;
        private long silent;

        Listener(long id) {
            this.id = id;
        }

        @SuppressWarnings("FutureReturnValueIgnored") // what is thrown would be lost with it: tell() lets nothing out
        void tellAgain(long afterMillis) {
            teller.schedule(this::tell, afterMillis, TimeUnit.MILLISECONDS);
        }

        private void tell() {
            try {
                RunJson now = runs.find(id).map(RunJson::of).orElse(null);
                boolean open = now != null
                        && (now.state().equals("waiting") || now.state().equals("running"));
                if (now != null && (!now.equals(told) || silent >= SILENT_TURNS)) {
                    emitter.send(
                            SseEmitter.event().name(open ? "progress" : "ended").data(now, MediaType.APPLICATION_JSON));
                    told = now;
                    silent = 0;
                }
                silent++;
                if (open && listeners.contains(this)) {
                    tellAgain(EVERY_MILLIS);
                } else {
                    emitter.complete();
                }
            } catch (IOException | IllegalStateException e) {
                log.debug("Nobody listens to search {} any more: {}", id, e.getMessage());
                listeners.remove(this);
            } catch (RuntimeException e) {
                log.warn("What search {} does cannot be told", id, e);
                emitter.completeWithError(e);
            }
        }
    }

    /** An open line would keep the program from ending. */
    @EventListener(ContextClosedEvent.class)
    void hangUp() {
        teller.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        teller.shutdown();
        listeners.forEach(l -> l.emitter.complete());
    }
}
