package org.scarfwright.shop.web;

import org.scarfwright.shop.ShopStart;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The first page of an empty shop. */
@Controller
class StartController {
    private final ShopStart start;

    StartController(ShopStart start) {
        this.start = start;
    }

    @GetMapping("/start")
    String choose(Model model) {
        model.addAttribute("started", start.isStarted());
        return "shop/start";
    }

    @PostMapping("/start/demo")
    String loadDemo(RedirectAttributes after) {
        start.loadDemo();
        after.addFlashAttribute(
                "notice", "The demo shop is loaded: a rack of wood, the designs and a week of orders, all invented.");
        return "redirect:/";
    }

    @PostMapping("/start/empty")
    String startEmpty(RedirectAttributes after) {
        start.startEmpty();
        after.addFlashAttribute(
                "notice", "The shop begins empty, with common rules and saws. Look them over on this page.");
        return "redirect:/shop";
    }
}
