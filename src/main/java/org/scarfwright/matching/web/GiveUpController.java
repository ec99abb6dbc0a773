package org.scarfwright.matching.web;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.matching.Plans.GivingUp;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.util.UriUtils;

/** The page on which a neck whose wood is spoilt is taken out of its plan, so that it can be matched again. */
@Controller
class GiveUpController {
    private static final String NECK = "/match/{plan:\\d{1,18}}/necks/{order}/{number:\\d{1,6}}";

    private final Plans plans;

    GiveUpController(Plans plans) {
        this.plans = plans;
    }

    @GetMapping(NECK)
    ModelAndView show(
            @PathVariable("plan") long plan, @PathVariable("order") String order, @PathVariable("number") int number) {
        return page(new PlannedNeck(plan, order, number), Map.of(), List.of(), HttpStatus.OK);
    }

    @PostMapping(NECK)
    Object giveUp(
            @PathVariable("plan") long plan,
            @PathVariable("order") String order,
            @PathVariable("number") int number,
            @RequestParam Map<String, String> typed,
            RedirectAttributes flash) {
        PlannedNeck neck = new PlannedNeck(plan, order, number);
        try {
            GivingUp done = plans.giveUp(neck, typed.getOrDefault("who", ""), typed.getOrDefault("why", ""));
            flash.addFlashAttribute(
                    "notice",
                    neck.title() + " is given up."
                            + (done.freed().isEmpty()
                                    ? ""
                                    : " " + String.join(" and ", done.freed())
                                            + (done.freed().size() == 1 ? " is" : " are")
                                            + " free on the rack again."));
            return MatchController.redirect(path(neck));
        } catch (InvalidInputException e) {
            return page(neck, typed, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            return refused(neck, typed, e);
        }
    }

    @PostMapping(NECK + "/make-after-all")
    Object makeAfterAll(
            @PathVariable("plan") long plan,
            @PathVariable("order") String order,
            @PathVariable("number") int number,
            RedirectAttributes flash) {
        PlannedNeck neck = new PlannedNeck(plan, order, number);
        try {
            plans.makeAfterAll(neck);
            flash.addFlashAttribute(
                    "notice",
                    neck.title() + " is made by plan " + plan + " after all. Lay the week again to give it time.");
            return MatchController.redirect(path(neck));
        } catch (ConflictException e) {
            return refused(neck, Map.of(), e);
        }
    }

    private static String path(PlannedNeck neck) {
        return "/match/" + neck.plan() + "/necks/" + UriUtils.encodePathSegment(neck.order(), StandardCharsets.UTF_8)
                + "/" + neck.number();
    }

    private ModelAndView refused(PlannedNeck neck, Map<String, String> typed, ConflictException e) {
        ModelAndView page = page(neck, typed, List.of(), HttpStatus.CONFLICT);
        page.addObject("conflict", e.getMessage());
        return page;
    }

    private ModelAndView page(PlannedNeck neck, Map<String, String> typed, List<FieldError> errors, HttpStatus status) {
        Plan plan = plans.find(neck.plan())
                .orElseThrow(() -> new NotFoundException("There is no plan " + neck.plan() + "."));
        ModelAndView page = new ModelAndView("matching/neck");
        page.setStatus(status);
        page.addObject("neck", neck);
        page.addObject("plan", plan);
        page.addObject("accepted", plan.state() == Plan.State.ACCEPTED);
        page.addObject("standing", plans.neck(neck));
        page.addObject("typed", typed);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }
}
