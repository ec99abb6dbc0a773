package org.scarfwright.matching.web;

import jakarta.servlet.http.HttpServletResponse;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.servlet.ModelAndView;

/**
 * The page of one search. It leads to the plan by itself: the script asks again whenever the search has something to tell, and
 * a browser without script loads the page again.
 */
@Controller
class RunController {
    private static final int REFRESH_SECONDS = 2;

    private final MatchRuns runs;
    private final Shop shop;

    RunController(MatchRuns runs, Shop shop) {
        this.runs = runs;
        this.shop = shop;
    }

    /** The plan where there is one, or what was found near to it; else the search's own page. */
    static String leadsTo(MatchRun run) {
        if (run.kind() == MatchRun.Kind.NEAR_EQUAL && !run.open()) {
            return "/match/" + run.origin() + "/near-equal";
        }
        return run.plan() == null ? "/match/runs/" + run.id() : "/match/" + run.plan();
    }

    @GetMapping("/match/runs/{id:\\d{1,18}}")
    Object show(
            @PathVariable("id") long id,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean redrawing,
            HttpServletResponse response) {
        MatchRun run = runs.find(id).orElseThrow(() -> new NotFoundException("There is no search " + id + "."));
        response.setHeader("Cache-Control", "no-store");
        if (run.plan() == null && (run.open() || run.kind() != MatchRun.Kind.NEAR_EQUAL)) {
            return page(run);
        }
        String plan = leadsTo(run);
        // A redirect inside a redraw would put the plan's page into the search's.
        return redrawing
                ? ResponseEntity.status(HttpStatus.NO_CONTENT)
                        .header("HX-Redirect", response.encodeRedirectURL(plan))
                        .build()
                : MatchController.redirect(plan);
    }

    @PostMapping("/match/runs/{id:\\d{1,18}}/stop")
    Object stop(@PathVariable("id") long id) {
        runs.stop(id);
        return MatchController.redirect(leadsTo(runs.await(id, MatchController.QUICK)));
    }

    private ModelAndView page(MatchRun run) {
        ModelAndView page = new ModelAndView("matching/run");
        page.addObject("run", run);
        page.addObject("currency", shop.settings().currency());
        page.addObject("pageScript", "/match-run.js");
        if (run.open()) {
            page.addObject("refreshSeconds", REFRESH_SECONDS);
        }
        return page;
    }
}
