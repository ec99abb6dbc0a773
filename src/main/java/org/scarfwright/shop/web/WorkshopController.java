package org.scarfwright.shop.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.scarfwright.shop.DayOff;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.StepRecords;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.shop.WorkshopBook.VersionedGlue;
import org.scarfwright.shop.WorkshopBook.VersionedWorkshop;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.web.Choice;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Hours, hands, clamps, days off and glues, shown and edited. */
@Controller
class WorkshopController {
    private static final int LONGEST_WORD = 80;

    private final WorkshopBook book;
    private final StepRecords records;

    WorkshopController(WorkshopBook book, StepRecords records) {
        this.book = book;
        this.records = records;
    }

    /** A glue as a row of the table. */
    record GlueRow(String code, String name, String clamp, String cure, String lowest, int open, String origin) {}

    /** A day off as it was typed. */
    record DayOffForm(String day, String word) {
        static final DayOffForm EMPTY = new DayOffForm("", "");

        DayOff read(Entries entries) {
            LocalDate read = LocalDate.EPOCH;
            try {
                read = LocalDate.parse(day.strip());
            } catch (DateTimeException e) {
                entries.refuse(
                        dayEntry(),
                        (day.isBlank() ? "is empty" : "“" + day.strip() + "” is not a day")
                                + "; write for example 2026-12-24");
            }
            String why = entries.text(new Entry("word", "Why", word), LONGEST_WORD);
            entries.throwIfRefused();
            return new DayOff(read, why);
        }

        Entry dayEntry() {
            return new Entry("day", "Day off", day);
        }
    }

    @GetMapping("/shop/workshop")
    ModelAndView show() {
        VersionedWorkshop now = book.workshop();
        return page(WorkshopForm.of(now.version(), now.workshop()), DayOffForm.EMPTY, List.of(), HttpStatus.OK);
    }

    @PostMapping("/shop/workshop")
    ModelAndView change(@RequestParam Map<String, String> texts, RedirectAttributes after) {
        WorkshopForm form = new WorkshopForm(texts.getOrDefault("version", ""), texts);
        try {
            Workshop wanted = read(form, Entries.ofApi());
            if (!book.change(version(form.version()), wanted)) {
                return page(
                        form.withVersion(book.workshop().version()),
                        DayOffForm.EMPTY,
                        List.of(changedMeanwhile()),
                        HttpStatus.CONFLICT);
            }
        } catch (InvalidInputException e) {
            return page(form, DayOffForm.EMPTY, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        after.addFlashAttribute("notice", "Saved. It holds when the week is laid again.");
        return new ModelAndView("redirect:/shop/workshop");
    }

    /** @throws InvalidInputException with every error */
    private Workshop read(WorkshopForm form, Entries entries) {
        Workshop wanted = form.read(entries);
        refuseUnknownGlue(book, wanted, form, entries);
        return wanted;
    }

    static void refuseUnknownGlue(WorkshopBook book, Workshop wanted, WorkshopForm form, Entries entries) {
        if (wanted.glue().isPresent() && book.glue(wanted.glue().get()).isEmpty()) {
            entries.refuse(
                    form.glueEntry(), "“" + wanted.glue().get() + "” is no glue of the shop; choose one from its list");
            entries.throwIfRefused();
        }
    }

    @PostMapping("/shop/days-off")
    ModelAndView addDayOff(
            @RequestParam(defaultValue = "") String day,
            @RequestParam(defaultValue = "") String word,
            RedirectAttributes after) {
        DayOffForm form = new DayOffForm(day, word);
        try {
            Entries entries = Entries.ofApi();
            DayOff off = form.read(entries);
            if (!book.addDayOff(off)) {
                entries.refuse(form.dayEntry(), "“" + off.day() + "” is off already");
                entries.throwIfRefused();
            }
        } catch (InvalidInputException e) {
            VersionedWorkshop now = book.workshop();
            return page(
                    WorkshopForm.of(now.version(), now.workshop()), form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        after.addFlashAttribute("notice", "That day is off. Lay the week again if work lies on it.");
        return new ModelAndView("redirect:/shop/workshop");
    }

    @PostMapping("/shop/days-off/remove")
    String removeDayOff(@RequestParam(defaultValue = "") String day, RedirectAttributes after) {
        try {
            boolean was = book.removeDayOff(LocalDate.parse(day));
            after.addFlashAttribute(
                    "notice", was ? day + " is a working day again." : day + " was a working day already.");
        } catch (DateTimeException e) {
            throw new NotFoundException("“" + day + "” is not a day.");
        }
        return "redirect:/shop/workshop";
    }

    @GetMapping("/shop/glues/new")
    ModelAndView askForGlue() {
        return gluePage(GlueForm.empty(), List.of(), HttpStatus.OK, true);
    }

    @PostMapping("/shop/glues")
    ModelAndView addGlue(@ModelAttribute GlueForm form, RedirectAttributes after) {
        try {
            Entries entries = Entries.ofApi();
            Glue glue = form.read(entries);
            if (!book.addGlue(glue)) {
                entries.refuse(form.codeEntry(), "“" + glue.code() + "” is another glue’s; choose a code of its own");
                entries.throwIfRefused();
            }
            after.addFlashAttribute("notice", glue.name() + " is in the shop.");
            return new ModelAndView("redirect:/shop/workshop");
        } catch (InvalidInputException e) {
            return gluePage(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT, true);
        }
    }

    @GetMapping("/shop/glues/{code}")
    ModelAndView showGlue(@PathVariable String code) {
        VersionedGlue now = find(code);
        return gluePage(GlueForm.of(now.version(), now.glue()), List.of(), HttpStatus.OK, false);
    }

    @PostMapping("/shop/glues/{code}")
    ModelAndView changeGlue(@PathVariable String code, @ModelAttribute GlueForm sent, RedirectAttributes after) {
        GlueForm form = sent.as(String.valueOf(sent.version()), code);
        Glue wanted;
        try {
            wanted = form.read(Entries.ofApi());
        } catch (InvalidInputException e) {
            return gluePage(form, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT, false);
        }
        if (!book.changeGlue(version(String.valueOf(form.version())), wanted)) {
            return gluePage(
                    form.as(Long.toString(find(code).version()), code),
                    List.of(changedMeanwhile()),
                    HttpStatus.CONFLICT,
                    false);
        }
        after.addFlashAttribute("notice", wanted.name() + " is saved. Joints that are glued already keep their times.");
        return new ModelAndView("redirect:/shop/workshop");
    }

    @PostMapping("/shop/glues/{code}/remove")
    ModelAndView removeGlue(
            @PathVariable String code, @RequestParam(defaultValue = "") String version, RedirectAttributes after) {
        VersionedGlue now = find(code);
        try {
            boolean removed = book.removeGlue(version(version), code);
            after.addFlashAttribute(
                    "notice",
                    removed
                            ? now.glue().name() + " is removed."
                            : now.glue().name()
                                    + " was changed since you opened its page and was not removed. Look at it again.");
        } catch (ConflictException e) {
            ModelAndView page = gluePage(GlueForm.of(now.version(), now.glue()), List.of(), HttpStatus.CONFLICT, false);
            page.addObject("conflict", e.getMessage());
            return page;
        }
        return new ModelAndView("redirect:/shop/workshop");
    }

    private ModelAndView page(WorkshopForm form, DayOffForm off, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("shop/workshop");
        page.setStatus(status);
        page.addObject("form", form);
        page.addObject("days", WorkshopForm.days());
        page.addObject("steps", WorkshopForm.steps(book.workshop().workshop(), records.learned()));
        page.addObject("sources", WorkshopForm.sources());
        page.addObject("off", off);
        page.addObject("daysOff", book.daysOff());
        List<Choice> glues = new ArrayList<>(List.of(new Choice("", "none")));
        book.glues().forEach(g -> glues.add(new Choice(g.glue().code(), g.glue().name())));
        page.addObject("glueChoices", glues);
        page.addObject("glues", book.glues().stream().map(g -> row(g.glue())).toList());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private static GlueRow row(Glue g) {
        return new GlueRow(
                g.code(),
                g.name(),
                GlueForm.hours(g.clamp()),
                GlueForm.hours(g.cure()),
                Entries.number(g.lowestCelsius()),
                g.openMinutes(),
                g.commonPractice() ? "common practice" : "the shop’s own");
    }

    private ModelAndView gluePage(GlueForm form, List<FieldError> errors, HttpStatus status, boolean isNew) {
        ModelAndView page = new ModelAndView("shop/glue");
        page.setStatus(status);
        page.addObject("form", form);
        page.addObject("isNew", isNew);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private VersionedGlue find(String code) {
        return book.glue(code).orElseThrow(() -> new NotFoundException("There is no glue “" + code + "” in the shop."));
    }

    private static FieldError changedMeanwhile() {
        return new FieldError(
                "",
                "This page",
                "",
                "was changed by somebody since you opened it; your entries are kept below. Save again to replace it");
    }

    /** A version nobody can read is no version anything ever had. */
    private static long version(String text) {
        return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }
}
