package org.scarfwright.week.web;

import java.util.List;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.PlanPapers;
import org.scarfwright.week.paper.Correction;
import org.scarfwright.week.paper.CutSheets;
import org.scarfwright.week.paper.JigTemplates;
import org.scarfwright.week.paper.PaperSize;
import org.scarfwright.week.paper.PlanOnPaper;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** Cut sheets and jig templates of a plan: looked at, printed by the browser, or as PDF. The PDFs are the API's too. */
@Controller
class PaperController {
    private final PlanPapers papers;
    private final Shop shop;

    PaperController(PlanPapers papers, Shop shop) {
        this.papers = papers;
        this.shop = shop;
    }

    @GetMapping("/match/{id:\\d{1,18}}/sheets")
    ModelAndView sheets(
            @PathVariable("id") long id,
            @RequestParam(name = "paper", defaultValue = "A4") String paper,
            @RequestParam(name = "measured", defaultValue = "") String measured,
            @RequestParam(name = "what", defaultValue = "cut") String what) {
        PlanOnPaper plan = papers.of(id);
        ModelAndView page = new ModelAndView("week/sheets");
        boolean jigs = what.equals("jig");
        try {
            PaperSize size = PaperSize.of(paper);
            Correction correction = Correction.of(measured);
            page.addObject(
                    "sheets",
                    jigs ? JigTemplates.pictures(plan, size, correction) : CutSheets.pictures(plan, size, correction));
            page.addObject("errorList", List.of());
            page.addObject("errors", FieldErrors.byField(List.of()));
        } catch (InvalidInputException e) {
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            page.addObject("sheets", List.of());
            page.addObject("errorList", e.errors());
            page.addObject("errors", FieldErrors.byField(e.errors()));
        }
        page.addObject("planId", id);
        page.addObject("planWeek", plan.plan().week());
        page.addObject("paper", paper);
        page.addObject("measured", measured);
        page.addObject("jigs", jigs);
        page.addObject("papers", List.of(new Choice("A4", "A4"), new Choice("Letter", "Letter")));
        page.addObject("whats", List.of(new Choice("cut", "cut sheets"), new Choice("jig", "jig templates")));
        return page;
    }

    @GetMapping("/match/{id:\\d{1,18}}/cut-sheets.pdf")
    ResponseEntity<byte[]> cutSheets(
            @PathVariable("id") long id,
            @RequestParam(name = "paper", defaultValue = "A4") String paper,
            @RequestParam(name = "measured", defaultValue = "") String measured) {
        return PaperApi.pdf(
                "plan-" + id + "-cut-sheets.pdf",
                CutSheets.pdf(papers.of(id), PaperSize.of(paper), Correction.of(measured)));
    }

    @GetMapping("/match/{id:\\d{1,18}}/jig-templates.pdf")
    ResponseEntity<byte[]> jigTemplates(
            @PathVariable("id") long id,
            @RequestParam(name = "paper", defaultValue = "A4") String paper,
            @RequestParam(name = "measured", defaultValue = "") String measured) {
        return PaperApi.pdf(
                "plan-" + id + "-jig-templates.pdf",
                JigTemplates.pdf(papers.of(id), PaperSize.of(paper), Correction.of(measured)));
    }

    /** Of one joint, without a plan. */
    @GetMapping("/joint/jig-template.pdf")
    ResponseEntity<byte[]> jigTemplate(
            @RequestParam(name = "angle", defaultValue = "") String angle,
            @RequestParam(name = "thickness", defaultValue = "") String thickness,
            @RequestParam(name = "paper", defaultValue = "A4") String paper,
            @RequestParam(name = "measured", defaultValue = "") String measured) {
        LengthUnit unit = shop.settings().unit();
        return JigAsked.read(
                        angle, new JigAsked.Thick("thickness", thickness, unit), new JigAsked.Printer(paper, measured))
                .pdf(unit);
    }
}
