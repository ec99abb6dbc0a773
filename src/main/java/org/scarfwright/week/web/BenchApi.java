package org.scarfwright.week.web;

import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.scarfwright.week.Bench;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The bench over the API: what its page can do. */
@RestController
class BenchApi {
    private final Bench bench;
    private final Clock clock;

    BenchApi(Bench bench, Clock clock) {
        this.bench = bench;
        this.clock = clock;
    }

    /** A step and whether it can be done now. */
    record CardJson(
            WeekJson.StepJson step,
            @Nullable String waitsFor,
            @Nullable String glue,
            String design) {
        static CardJson of(Bench.Card c) {
            return new CardJson(
                    WeekJson.step(c.step()),
                    c.waitsFor().orElse(null),
                    c.glue().map(g -> g.name()).orElse(null),
                    c.design());
        }
    }

    /** A glued joint; instants in UTC. */
    record CuringJson(WeekJson.StepJson glued, Instant clampedUntil, Instant curedAt, boolean opened) {}

    /** Who did it, how long it took and, where something else happened, what. */
    record ActJson(
            @Schema(maxLength = 40) @Nullable String who,

            @Schema(minimum = "0", maximum = "1440") @Nullable
            Integer minutes,

            @Schema(maxLength = 300) @Nullable String reason) {
        String name() {
            return BenchController.name(who == null ? "" : who);
        }
    }

    /** What is planned for a day; without a day, today. */
    @GetMapping("/api/bench")
    List<CardJson> day(
            @RequestParam(defaultValue = "")
                    @Parameter(description = "such as 2026-12-04", schema = @Schema(type = "string", format = "date"))
                    String day) {
        LocalDate asked = day.isBlank() ? LocalDate.now(clock) : WeekJson.day(day);
        return bench.day(asked).stream().map(CardJson::of).toList();
    }

    @GetMapping("/api/bench/curing")
    List<CuringJson> curing() {
        return bench.curing().stream()
                .map(c -> new CuringJson(WeekJson.step(c.glued()), c.clampedUntil(), c.curedAt(), c.opened()))
                .toList();
    }

    @GetMapping("/api/steps/{id}")
    CardJson card(@PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id) {
        return CardJson.of(bench.card(id));
    }

    @PostMapping("/api/steps/{id}/start")
    CardJson start(
            @PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id,
            @RequestBody ActJson act) {
        return CardJson.of(bench.start(id, act.name()));
    }

    @PostMapping("/api/steps/{id}/done")
    CardJson done(
            @PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id,
            @RequestBody ActJson act) {
        Integer minutes = act.minutes();
        return CardJson.of(bench.done(id, minutes == null ? OptionalInt.empty() : OptionalInt.of(minutes), act.name()));
    }

    @PostMapping("/api/steps/{id}/something-else")
    CardJson somethingElse(
            @PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id,
            @RequestBody ActJson act) {
        return CardJson.of(bench.somethingElse(id, act.reason() == null ? "" : act.reason(), act.name()));
    }

    @PostMapping("/api/steps/{id}/go-on")
    CardJson goOn(@PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id) {
        return CardJson.of(bench.goOn(id));
    }

    @PostMapping("/api/steps/{id}/take-back")
    CardJson takeBack(@PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id) {
        return CardJson.of(bench.takeBack(id));
    }
}
