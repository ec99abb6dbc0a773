package org.scarfwright.rack.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import org.scarfwright.rack.OwnWoods;
import org.scarfwright.rack.OwnWoods.VersionedWood;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Adding, editing and removing woods of the shop's own. */
@Controller
class OwnWoodController {
    private final SpeciesCatalog catalog;
    private final OwnWoods woods;

    OwnWoodController(SpeciesCatalog catalog, OwnWoods woods) {
        this.catalog = catalog;
        this.woods = woods;
    }

    @GetMapping("/wood/new")
    ModelAndView fresh() {
        return page(new Entry("", "", "", WoodForm.empty()), List.of(), HttpStatus.OK);
    }

    @PostMapping("/wood")
    ModelAndView add(HttpServletRequest request, RedirectAttributes after) {
        QueryText query = new QueryText(request.getParameterMap());
        Species wanted = WoodForm.read(query, "", catalog.all());
        Entry entry = new Entry("", "", "", WoodForm.typed(query));
        if (wanted == null) {
            return page(entry, query.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        try {
            Species added = woods.add(wanted).wood();
            after.addFlashAttribute(
                    "notice", added.commonName() + " is added. It can be used like any other wood now.");
            return new ModelAndView("redirect:/wood/" + added.id());
        } catch (ConflictException e) {
            return page(entry, List.of(whole("was not added. " + e.getMessage())), HttpStatus.CONFLICT);
        }
    }

    @GetMapping("/wood/{id}/edit")
    ModelAndView edit(@PathVariable String id) {
        VersionedWood found = own(id);
        return page(
                new Entry(id, found.wood().commonName(), Long.toString(found.version()), WoodForm.texts(found.wood())),
                List.of(),
                HttpStatus.OK);
    }

    @PostMapping("/wood/{id}")
    ModelAndView change(@PathVariable String id, HttpServletRequest request, RedirectAttributes after) {
        VersionedWood found = own(id);
        String name = found.wood().commonName();
        QueryText query = new QueryText(request.getParameterMap());
        Species wanted = WoodForm.read(query, id, catalog.all());
        if (wanted == null) {
            Entry entry = new Entry(id, name, query.typed("version"), WoodForm.typed(query));
            return page(entry, query.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        if (woods.change(version(query.typed("version")), wanted)) {
            after.addFlashAttribute("notice", wanted.commonName() + " is saved.");
            return new ModelAndView("redirect:/wood/" + id);
        }
        Entry entry = new Entry(id, name, Long.toString(found.version()), WoodForm.typed(query));
        return page(
                entry,
                List.of(
                        whole(
                                "was changed since you opened this page; your entries are kept below. Save again to replace it")),
                HttpStatus.CONFLICT);
    }

    @PostMapping("/wood/{id}/remove")
    String remove(@PathVariable String id, @RequestParam(defaultValue = "") String version, RedirectAttributes after) {
        String name = own(id).wood().commonName();
        try {
            if (woods.remove(version(version), id)) {
                after.addFlashAttribute("notice", name + " is removed.");
                return "redirect:/wood";
            }
            after.addFlashAttribute("notice", name + " was changed since you opened its page and was not removed.");
        } catch (ConflictException e) {
            after.addFlashAttribute("notice", String.valueOf(e.getMessage()));
        }
        return "redirect:/wood/" + id;
    }

    /**
     * What the form holds.
     *
     * @param id empty for a new wood
     * @param name as it is kept; empty for a new wood
     */
    record Entry(String id, String name, String version, Map<String, String> texts) {
        public boolean isNew() {
            return id.isEmpty();
        }
    }

    private static ModelAndView page(Entry entry, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("rack/own-wood");
        page.setStatus(status);
        page.addObject("entry", entry);
        page.addObject("form", entry.texts());
        page.addObject("bases", WoodForm.BASES);
        page.addObject("bonding", WoodForm.BONDING);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private VersionedWood own(String id) {
        VersionedWood found = WoodController.find(woods, id);
        if (!found.wood().own()) {
            throw new NotFoundException(found.wood().commonName()
                    + " is a published wood, and its figures stay as printed. Add a wood of your own instead.");
        }
        return found;
    }

    private static FieldError whole(String message) {
        return new FieldError("", "This wood", "", message);
    }

    static long version(String text) {
        return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }
}
