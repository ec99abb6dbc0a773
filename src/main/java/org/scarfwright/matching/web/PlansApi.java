package org.scarfwright.matching.web;

import java.net.URI;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.BlankAnswer;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Plans over the API. */
@RestController
@RequestMapping("/api/plans")
class PlansApi {
    private final Plans plans;

    PlansApi(Plans plans) {
        this.plans = plans;
    }

    /** @param week as written, 2026-W49 */
    record PlanRequest(@Nullable String week) {}

    /** Matches the week's orders with the free pieces and keeps the plan as a proposal. */
    @PostMapping
    ResponseEntity<PlanJson> make(@RequestBody PlanRequest request) {
        Plan plan = plans.make(week(request.week()));
        return ResponseEntity.created(URI.create("/api/plans/" + plan.id())).body(PlanJson.of(plan));
    }

    /** Every plan of a week, the one made last first. */
    @GetMapping
    List<PlanJson> ofWeek(@RequestParam String week) {
        return plans.ofWeek(week(week)).stream().map(PlanJson::of).toList();
    }

    @GetMapping("/{id}")
    PlanJson find(@PathVariable long id) {
        return PlanJson.of(plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + ".")));
    }

    /** Why a piece is not cut for an order: one answer for each part in each way the order may be made. */
    @GetMapping("/{id}/why-not")
    WhyNotJson whyNot(@PathVariable long id, @RequestParam String order, @RequestParam String piece) {
        return WhyNotJson.of(plans.whyNot(id, order, piece));
    }

    /** What one more blank would give the orders that could not be filled; lengths in millimetres or as people write them. */
    @GetMapping("/{id}/one-more")
    List<BlankAnswer> oneMore(@PathVariable long id, @ParameterObject BlankForm blank) {
        BlankForm.Sizes s = blank.read(LengthUnit.MM);
        return plans.oneMore(id, s.length(), s.width(), s.thickness());
    }

    /** Reserves the pieces. Accepting an accepted plan again changes nothing. */
    @PostMapping("/{id}/accept")
    PlanJson accept(@PathVariable long id) {
        return PlanJson.of(plans.accept(id));
    }

    /** Frees the pieces. Undoing an undone plan again changes nothing. */
    @PostMapping("/{id}/undo")
    PlanJson undo(@PathVariable long id) {
        return PlanJson.of(plans.undo(id));
    }

    static IsoWeek week(@Nullable String text) {
        if (text == null || text.isBlank()) {
            throw new InvalidInputException(
                    new FieldError("/week", "Week", "", "is missing; write for example 2026-W49"));
        }
        try {
            return IsoWeek.parse(text);
        } catch (MeasureFormatException e) {
            throw new InvalidInputException(new FieldError("/week", "Week", text, "is not right: " + e.getMessage()));
        }
    }
}
