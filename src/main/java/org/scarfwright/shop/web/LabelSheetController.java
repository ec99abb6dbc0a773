package org.scarfwright.shop.web;

import java.util.List;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.LabelSheet;
import org.scarfwright.shop.LabelSheets;
import org.scarfwright.shop.LabelSheets.Versioned;
import org.scarfwright.shop.Shop;
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
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The sheets of labels, shown and edited. */
@Controller
@RequestMapping("/shop/label-sheets")
class LabelSheetController {
    private static final String BACK = "redirect:/shop/label-sheets";

    private final LabelSheets sheets;
    private final Shop shop;

    LabelSheetController(LabelSheets sheets, Shop shop) {
        this.sheets = sheets;
        this.shop = shop;
    }

    @GetMapping
    ModelAndView list() {
        ModelAndView page = new ModelAndView("shop/label-sheets");
        page.addObject(
                "sheets",
                sheets.all().stream()
                        .map(s -> LabelSheetForm.of(s.version(), s.sheet(), unit()))
                        .toList());
        page.addObject("unitShown", unit().symbol());
        return page;
    }

    @GetMapping("/new")
    ModelAndView ask() {
        return page(LabelSheetForm.empty(unit()), List.of(), HttpStatus.OK, true);
    }

    @PostMapping
    ModelAndView add(@ModelAttribute LabelSheetForm form, RedirectAttributes after) {
        try {
            Entries entries = Entries.ofPage(form.unitShown());
            LabelSheet sheet = form.read(entries);
            if (!sheets.add(sheet)) {
                entries.refuse(
                        form.codeEntry(), "“" + sheet.code() + "” is another label sheet's; choose a code of its own");
                entries.throwIfRefused();
            }
            after.addFlashAttribute("notice", sheet.name() + " is among the label sheets.");
            return new ModelAndView(BACK);
        } catch (InvalidInputException e) {
            return page(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT, true);
        }
    }

    @GetMapping("/{code}")
    ModelAndView show(@PathVariable String code) {
        Versioned now = find(code);
        return page(LabelSheetForm.of(now.version(), now.sheet(), unit()), List.of(), HttpStatus.OK, false);
    }

    @PostMapping("/{code}")
    ModelAndView change(@PathVariable String code, @ModelAttribute LabelSheetForm sent, RedirectAttributes after) {
        LabelSheetForm form = sent.withCode(code);
        LabelSheet wanted;
        try {
            wanted = form.read(Entries.ofPage(form.unitShown()));
        } catch (InvalidInputException e) {
            return page(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT, false);
        }
        if (!sheets.change(ShopController.version(form.version()), wanted)) {
            String now = Long.toString(find(code).version());
            return page(
                    form.withVersion(now),
                    List.of(ShopController.changedMeanwhile("This label sheet")),
                    HttpStatus.CONFLICT,
                    false);
        }
        after.addFlashAttribute("notice", wanted.name() + " is saved.");
        return new ModelAndView(BACK);
    }

    @PostMapping("/{code}/remove")
    String remove(
            @PathVariable String code, @RequestParam(defaultValue = "") String version, RedirectAttributes after) {
        LabelSheet sheet = find(code).sheet();
        if (sheets.remove(ShopController.version(version), code)) {
            after.addFlashAttribute("notice", sheet.name() + " is removed.");
            after.addFlashAttribute("removed", LabelSheetForm.of(0, sheet, unit()));
        } else {
            after.addFlashAttribute(
                    "notice",
                    sheet.name() + " was changed since you opened its page and was not removed. Look at it again.");
        }
        return BACK;
    }

    private static ModelAndView page(LabelSheetForm form, List<FieldError> errors, HttpStatus status, boolean isNew) {
        ModelAndView page = new ModelAndView("shop/label-sheet");
        page.setStatus(status);
        page.addObject("form", form);
        page.addObject("papers", LabelSheetForm.PAPERS);
        page.addObject("unitShown", form.unitShown().symbol());
        page.addObject("isNew", isNew);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private Versioned find(String code) {
        return sheets.find(code)
                .orElseThrow(() -> new NotFoundException("There is no label sheet “" + code + "” in the shop."));
    }

    private LengthUnit unit() {
        return shop.settings().unit();
    }
}
