package org.scarfwright.week.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Optional;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.WeekWork;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** The week's work over the API: what its page can do. */
@RestController
class WeekApi {
    /** How a week is written: year and number, 01 to 53. */
    private static final String WEEK = "^\\d{4}-W(0[1-9]|[1-4]\\d|5[0-3])$";

    private final WeekWork work;

    WeekApi(WeekWork work) {
        this.work = work;
    }

    /** A design's glue; none means the shop's own. */
    record DesignGlueJson(
            String design,
            @org.jspecify.annotations.Nullable String glue) {}

    /** What pins a step; only the description of the API is made from it. */
    record PinJson(
            @Schema(format = "date", example = "2026-12-04", requiredMode = Schema.RequiredMode.REQUIRED)
            String day) {}

    /** What chooses a glue; only the description of the API is made from it. */
    record GlueChoiceJson(
            @Schema(description = "code of a glue of the shop; empty or null for the shop’s own", maxLength = 20)
            @org.jspecify.annotations.Nullable
            String glue) {}

    @GetMapping("/api/weeks/{week}/schedule")
    WeekJson schedule(
            @PathVariable
                    @Parameter(description = "an ISO 8601 week", schema = @Schema(pattern = WEEK, example = "2026-W49"))
                    String week) {
        return WeekJson.of(work.week(WeekJson.week(week)));
    }

    @PostMapping("/api/weeks/{week}/schedule")
    WeekJson lay(
            @PathVariable
                    @Parameter(description = "an ISO 8601 week", schema = @Schema(pattern = WEEK, example = "2026-W49"))
                    String week) {
        return WeekJson.of(work.lay(WeekJson.week(week)));
    }

    @PutMapping("/api/steps/{id}/day")
    @Operation(
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = PinJson.class))))
    WeekJson.StepJson pin(
            @PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id,
            @RequestBody JsonNode body) {
        return WeekJson.step(work.pin(id, WeekJson.day(text(body, "day"))));
    }

    @DeleteMapping("/api/steps/{id}/day")
    WeekJson.StepJson unpin(@PathVariable @Parameter(schema = @Schema(type = "integer", minimum = "1")) long id) {
        return WeekJson.step(work.unpin(id));
    }

    @GetMapping("/api/designs/{design}/glue")
    DesignGlueJson glue(@PathVariable @Parameter(schema = @Schema(minLength = 1, maxLength = 40)) String design) {
        return new DesignGlueJson(design, work.glueOf(design).orElse(null));
    }

    @PutMapping("/api/designs/{design}/glue")
    @Operation(
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = GlueChoiceJson.class))))
    DesignGlueJson chooseGlue(
            @PathVariable @Parameter(schema = @Schema(minLength = 1, maxLength = 40)) String design,
            @RequestBody JsonNode body) {
        String glue = body.isObject() && body.has("glue") && body.get("glue").isNull() ? "" : text(body, "glue");
        work.chooseGlue(design, Optional.of(glue).filter(g -> !g.isBlank()));
        return glue(design);
    }

    private static String text(JsonNode body, String key) {
        JsonNode value = body.isObject() ? body.get(key) : null;
        if (value == null || !value.isString()) {
            throw new InvalidInputException(new FieldError(
                    "/" + key,
                    key,
                    value == null ? "" : value.toString(),
                    "is missing or no text; send {\"" + key + "\": \"…\"}"));
        }
        return value.stringValue();
    }
}
