package org.scarfwright.matching.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page on which some orders of a plan are accepted and the others are matched anew. */
@Controller
class LockController {
    private final Plans plans;
    private final MatchRuns runs;

    LockController(Plans plans, MatchRuns runs) {
        this.plans = plans;
        this.runs = runs;
    }

    /**
     * An order the plan makes.
     *
     * @param necks how many
     * @param pieces what it is cut from, one sentence for each piece; those it shares say with whom
     */
    record Row(String order, int necks, List<String> pieces) {}

    @GetMapping("/match/{id:\\d{1,18}}/lock")
    ModelAndView show(@PathVariable("id") long id) {
        return page(id, List.of(), List.of(), HttpStatus.OK);
    }

    @PostMapping("/match/{id:\\d{1,18}}/lock")
    Object accept(@PathVariable("id") long id, @ModelAttribute AskForm asked, RedirectAttributes flash) {
        try {
            MatchRuns.Locked done = runs.lock(id, asked.chosen());
            MatchRun remainder = done.remainder();
            int pieces = done.locked().layouts().size();
            String accepted = "Accepted as plan " + done.locked().id() + ": "
                    + (pieces == 1 ? "one piece is" : pieces + " pieces are") + " reserved.";
            if (remainder == null) {
                flash.addFlashAttribute("notice", accepted + " Nothing is left to match.");
                return MatchController.redirect("/match/" + done.locked().id());
            }
            flash.addFlashAttribute(
                    "notice",
                    accepted + " What is left is matched with the rest of the rack; undo on the page of plan "
                            + done.locked().id() + " frees the pieces again.");
            return MatchController.redirect(RunController.leadsTo(runs.await(remainder.id(), MatchController.QUICK)));
        } catch (InvalidInputException e) {
            return page(id, asked.chosen(), e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            ModelAndView page = page(id, asked.chosen(), List.of(), HttpStatus.CONFLICT);
            page.addObject("conflict", e.getMessage());
            return page;
        }
    }

    private ModelAndView page(long id, List<String> ticked, List<FieldError> errors, HttpStatus status) {
        Plan plan = plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + "."));
        ModelAndView page = new ModelAndView("matching/lock");
        page.setStatus(status);
        page.addObject("plan", plan);
        page.addObject("rows", rows(plan));
        page.addObject("ticked", ticked);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private static List<Row> rows(Plan plan) {
        Map<String, Integer> necks = new LinkedHashMap<>();
        plan.pairings().forEach(p -> necks.merge(p.order(), 1, Integer::sum));
        Map<String, List<String>> pieces = new LinkedHashMap<>();
        for (Plan.PieceLayout layout : plan.layouts()) {
            List<String> on = plan.ordersOn(layout.piece());
            for (String order : on) {
                List<String> others = on.stream().filter(o -> !o.equals(order)).toList();
                pieces.computeIfAbsent(order, k -> new ArrayList<>())
                        .add(layout.piece() + (others.isEmpty() ? "" : " with " + String.join(", ", others)));
            }
        }
        return necks.entrySet().stream()
                .map(e -> new Row(e.getKey(), e.getValue(), pieces.getOrDefault(e.getKey(), List.of())))
                .toList();
    }
}
