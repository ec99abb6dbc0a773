package org.scarfwright.web;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The page every figure's source is on. */
@Controller
class ScienceController {
    private final SciencePage page;

    ScienceController(SciencePage page) {
        this.page = page;
    }

    @GetMapping("/science")
    String science(Model model) {
        model.addAttribute("sections", page.sections());
        return "web/science";
    }
}
