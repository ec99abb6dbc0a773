package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlanComparison;
import org.scarfwright.matching.Plans;
import org.scarfwright.shop.Shop;
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

/** The page of near-equal plans: what was found near to one, and looking for more. */
@Controller
class NearController {
    /** So many orders are named here; the page of both plans has all. */
    private static final int ORDERS_SHOWN = 5;

    private final Plans plans;
    private final MatchRuns runs;
    private final Shop shop;

    NearController(Plans plans, MatchRuns runs, Shop shop) {
        this.plans = plans;
        this.runs = runs;
        this.shop = shop;
    }

    /**
     * One near-equal plan.
     *
     * @param costs what it spends against the other, in words
     * @param orders the first of the orders that are made otherwise
     * @param more how many others there are
     */
    record Near(Plan plan, String costs, int differing, List<PlanComparison.OrderPair> orders, int more) {}

    @GetMapping("/match/{id:\\d{1,18}}/near-equal")
    ModelAndView show(@PathVariable("id") long id) {
        return page(id, "", List.of(), HttpStatus.OK);
    }

    @PostMapping("/match/{id:\\d{1,18}}/near-equal")
    Object look(@PathVariable("id") long id, @RequestParam(name = "extra", defaultValue = "") String extra) {
        try {
            MatchRun run = runs.nearEqual(id, NearForm.read(extra));
            return MatchController.redirect(RunController.leadsTo(runs.await(run.id(), MatchController.QUICK)));
        } catch (InvalidInputException e) {
            return page(id, extra, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            ModelAndView page = page(id, extra, List.of(), HttpStatus.CONFLICT);
            page.addObject("conflict", e.getMessage());
            return page;
        }
    }

    private ModelAndView page(long id, String extra, List<FieldError> errors, HttpStatus status) {
        Plan plan = plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + "."));
        ModelAndView page = new ModelAndView("matching/near");
        page.setStatus(status);
        page.addObject("plan", plan);
        page.addObject("extra", extra);
        page.addObject("currency", shop.settings().currency());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        page.addObject("run", runs.lastNear(id).orElse(null));
        page.addObject(
                "near",
                plans.nearEquals(id).stream()
                        .map(n -> near(PlanComparison.of(plan, n)))
                        .toList());
        return page;
    }

    private Near near(PlanComparison c) {
        List<PlanComparison.OrderPair> otherwise =
                c.orders().stream().filter(PlanComparison.OrderPair::differs).toList();
        int shown = Math.min(ORDERS_SHOWN, otherwise.size());
        return new Near(
                c.second(),
                costs(c.extraCost(), shop.settings().currency()),
                otherwise.size(),
                otherwise.subList(0, shown),
                otherwise.size() - shown);
    }

    /** Such as: spends 1.20 EUR more. */
    static String costs(@Nullable BigDecimal extra, String currency) {
        if (extra == null) {
            return "its cost is not known by itself";
        }
        if (extra.signum() == 0) {
            return "spends the same";
        }
        return "spends " + extra.abs().toPlainString() + " " + currency + (extra.signum() > 0 ? " more" : " less");
    }
}
