package org.scarfwright.shop.web;

import java.util.List;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopEditing;
import org.scarfwright.shop.ShopEditing.VersionedSaw;
import org.scarfwright.shop.ShopEditing.VersionedSettings;
import org.scarfwright.shop.ShopSettings;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The shop's rules and saws, shown and edited. */
@Controller
class ShopController {
    private final ShopEditing shop;

    ShopController(ShopEditing shop) {
        this.shop = shop;
    }

    /** A saw as a row of the table. */
    record SawRow(
            String code,
            String name,
            String kind,
            String kerf,
            String depth,
            String reach,
            String angles,
            String truing,
            boolean first) {}

    @GetMapping("/shop")
    ModelAndView show() {
        VersionedSettings now = shop.editableSettings();
        return page(SettingsForm.of(now.version(), now.settings()), List.of(), HttpStatus.OK);
    }

    @PostMapping("/shop")
    ModelAndView change(@ModelAttribute SettingsForm form, RedirectAttributes after) {
        ShopSettings wanted;
        try {
            wanted = form.read(Entries.ofPage(form.unitShown()));
        } catch (InvalidInputException e) {
            return page(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        if (!shop.changeSettings(version(form.version()), wanted)) {
            long now = shop.editableSettings().version();
            return page(form.withVersion(now), List.of(changedMeanwhile("The rules")), HttpStatus.CONFLICT);
        }
        after.addFlashAttribute("notice", "The shop's rules are saved. They hold from the next match on.");
        return new ModelAndView("redirect:/shop");
    }

    @GetMapping("/shop/saws/new")
    ModelAndView askForSaw() {
        return sawPage(SawForm.empty(unit()), List.of(), HttpStatus.OK, true);
    }

    @PostMapping("/shop/saws")
    ModelAndView addSaw(@ModelAttribute SawForm form, RedirectAttributes after) {
        try {
            Entries entries = Entries.ofPage(form.unitShown());
            Saw saw = form.read(entries);
            if (!shop.addSaw(saw)) {
                entries.refuse(form.codeEntry(), "“" + saw.code() + "” is another saw's; choose a code of its own");
                entries.throwIfRefused();
            }
            after.addFlashAttribute("notice", saw.name() + " is in the shop.");
            return new ModelAndView("redirect:/shop");
        } catch (InvalidInputException e) {
            return sawPage(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT, true);
        }
    }

    @GetMapping("/shop/saws/{code}")
    ModelAndView showSaw(@PathVariable String code) {
        VersionedSaw now = find(code);
        return sawPage(SawForm.of(now.version(), now.saw(), unit()), List.of(), HttpStatus.OK, false);
    }

    @PostMapping("/shop/saws/{code}")
    ModelAndView changeSaw(@PathVariable String code, @ModelAttribute SawForm sent, RedirectAttributes after) {
        SawForm form = sent.withCode(code);
        Saw wanted;
        try {
            wanted = form.read(Entries.ofPage(form.unitShown()));
        } catch (InvalidInputException e) {
            return sawPage(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT, false);
        }
        if (!shop.changeSaw(version(form.version()), wanted)) {
            String now = Long.toString(find(code).version());
            return sawPage(form.withVersion(now), List.of(changedMeanwhile("This saw")), HttpStatus.CONFLICT, false);
        }
        after.addFlashAttribute("notice", wanted.name() + " is saved. It holds from the next match on.");
        return new ModelAndView("redirect:/shop");
    }

    @PostMapping("/shop/saws/{code}/prefer")
    String preferSaw(@PathVariable String code, RedirectAttributes after) {
        String name = find(code).saw().name();
        shop.preferSaw(code);
        after.addFlashAttribute("notice", name + " is preferred now.");
        return "redirect:/shop";
    }

    @PostMapping("/shop/saws/{code}/remove")
    String removeSaw(
            @PathVariable String code, @RequestParam(defaultValue = "") String version, RedirectAttributes after) {
        Saw saw = find(code).saw();
        if (shop.removeSaw(version(version), code)) {
            after.addFlashAttribute("notice", saw.name() + " is removed.");
            after.addFlashAttribute("removed", SawForm.of(0, saw, unit()));
        } else {
            after.addFlashAttribute(
                    "notice",
                    saw.name() + " was changed since you opened its page and was not removed. Look at it again.");
        }
        return "redirect:/shop";
    }

    private ModelAndView page(SettingsForm form, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("shop/shop");
        page.setStatus(status);
        page.addObject("form", form);
        page.addObject("units", SettingsForm.UNITS);
        page.addObject("unitShown", form.unitShown().symbol());
        page.addObject("saws", rows());
        page.addObject("sawUnit", unit().symbol());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private ModelAndView sawPage(SawForm form, List<FieldError> errors, HttpStatus status, boolean isNew) {
        ModelAndView page = new ModelAndView("shop/saw");
        page.setStatus(status);
        page.addObject("form", form);
        page.addObject("kinds", SawForm.KINDS);
        page.addObject("unitShown", form.unitShown().symbol());
        page.addObject("isNew", isNew);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private List<SawRow> rows() {
        LengthUnit unit = unit();
        List<VersionedSaw> saws = shop.editableSaws();
        String preferred = saws.get(0).saw().code();
        return saws.stream()
                .map(s -> SawForm.of(s.version(), s.saw(), unit))
                .map(f -> new SawRow(
                        f.code(),
                        f.name(),
                        f.kind(),
                        f.kerf(),
                        f.depth(),
                        f.reach(),
                        f.shallowestDegrees() + "° to " + f.steepestDegrees() + "°",
                        f.truing(),
                        f.code().equals(preferred)))
                .toList();
    }

    private VersionedSaw find(String code) {
        return shop.editableSaw(code)
                .orElseThrow(() -> new NotFoundException("There is no saw “" + code + "” in the shop."));
    }

    private LengthUnit unit() {
        return shop.editableSettings().settings().unit();
    }

    static FieldError changedMeanwhile(String what) {
        return new FieldError(
                "",
                what,
                "",
                "changed since you opened this page; your entries are kept below. Save again to replace it");
    }

    /** A version nobody can read is no version anything ever had. */
    static long version(String text) {
        return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }
}
