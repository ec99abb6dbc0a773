package org.scarfwright.matching.web;

import java.net.URI;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** Searches over the API: asked for, looked at, stopped. */
@RestController
@RequestMapping("/api/match-runs")
class RunsApi {
    private final MatchRuns runs;
    private final RunEvents events;

    RunsApi(MatchRuns runs, RunEvents events) {
        this.runs = runs;
        this.events = events;
    }

    /**
     * Asks for a week, or for some of its orders, to be matched and answers at once; the plan is there when the search is done.
     */
    @PostMapping
    ResponseEntity<RunJson> start(@RequestBody AskForm asked) {
        MatchRun run = runs.start(asked.readWeek(), asked.read());
        return ResponseEntity.status(HttpStatus.ACCEPTED)
                .header(
                        HttpHeaders.LOCATION,
                        URI.create("/api/match-runs/" + run.id()).toString())
                .body(RunJson.of(run));
    }

    @GetMapping("/{id}")
    RunJson find(@PathVariable long id) {
        return RunJson.of(found(id));
    }

    /** Stops the search and keeps the best plan so far. One that has ended stays as it is. */
    @PostMapping("/{id}/stop")
    RunJson stop(@PathVariable long id) {
        return RunJson.of(runs.stop(id));
    }

    /** Events <code>progress</code> while the search goes on and one <code>ended</code>; their data is the search. */
    @GetMapping(path = "/{id}/events", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter events(@PathVariable long id) {
        return events.of(found(id));
    }

    private MatchRun found(long id) {
        return runs.find(id).orElseThrow(() -> new NotFoundException("There is no search " + id + "."));
    }
}
