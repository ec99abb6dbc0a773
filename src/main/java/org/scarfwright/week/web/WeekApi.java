package org.scarfwright.week.web;

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
    private final WeekWork work;

    WeekApi(WeekWork work) {
        this.work = work;
    }

    /** A design's glue; none means the shop's own. */
    record DesignGlueJson(
            String design,
            @org.jspecify.annotations.Nullable String glue) {}

    @GetMapping("/api/weeks/{week}/schedule")
    WeekJson schedule(@PathVariable String week) {
        return WeekJson.of(work.week(WeekJson.week(week)));
    }

    @PostMapping("/api/weeks/{week}/schedule")
    WeekJson lay(@PathVariable String week) {
        return WeekJson.of(work.lay(WeekJson.week(week)));
    }

    @PutMapping("/api/steps/{id}/day")
    WeekJson.StepJson pin(@PathVariable long id, @RequestBody JsonNode body) {
        return WeekJson.step(work.pin(id, WeekJson.day(text(body, "day"))));
    }

    @DeleteMapping("/api/steps/{id}/day")
    WeekJson.StepJson unpin(@PathVariable long id) {
        return WeekJson.step(work.unpin(id));
    }

    @GetMapping("/api/designs/{design}/glue")
    DesignGlueJson glue(@PathVariable String design) {
        return new DesignGlueJson(design, work.glueOf(design).orElse(null));
    }

    @PutMapping("/api/designs/{design}/glue")
    DesignGlueJson chooseGlue(@PathVariable String design, @RequestBody JsonNode body) {
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
