package org.scarfwright.week.web;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.Orders;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.web.Choice;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.Bench;
import org.scarfwright.week.WeekWork;
import org.scarfwright.week.WorkStep;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.servlet.view.RedirectView;

/** The Week page: lay the work, look at it, move a step to another day, take it along as a calendar. */
@Controller
class WeekController {
    private static final int WEEKS_OFFERED = 4;

    private final WeekWork work;
    private final Bench bench;
    private final Orders orders;
    private final Designs designs;
    private final WorkshopBook book;
    private final Formats formats;
    private final Clock clock;

    WeekController(
            WeekWork work,
            Bench bench,
            Orders orders,
            Designs designs,
            WorkshopBook book,
            Formats formats,
            Clock clock) {
        this.work = work;
        this.bench = bench;
        this.orders = orders;
        this.designs = designs;
        this.book = book;
        this.formats = formats;
        this.clock = clock;
    }

    /** A design and the glue it names; empty for the shop's own. */
    record DesignGlue(String code, String name, String glue) {}

    @GetMapping("/week")
    ModelAndView week(@RequestParam(name = "week", defaultValue = "") String typed) {
        if (typed.isBlank()) {
            return page(atHand(), List.of(), HttpStatus.OK);
        }
        try {
            return page(IsoWeek.parse(typed), List.of(), HttpStatus.OK);
        } catch (MeasureFormatException e) {
            return wrongWeek(typed, e);
        }
    }

    @PostMapping("/week")
    Object lay(@RequestParam(name = "week", defaultValue = "") String typed, RedirectAttributes flash) {
        IsoWeek week;
        try {
            week = IsoWeek.parse(typed);
        } catch (MeasureFormatException e) {
            return wrongWeek(typed, e);
        }
        try {
            work.lay(week);
            flash.addFlashAttribute("notice", "The work is laid. What is done and what is in clamps stayed as it was.");
            return redirect("/week?week=" + week);
        } catch (InvalidInputException e) {
            return page(week, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            ModelAndView page = page(week, List.of(), HttpStatus.CONFLICT);
            page.addObject("conflict", e.getMessage());
            return page;
        }
    }

    /** Asked by the week's page while a better schedule is looked for; the page is shown anew once that has ended. */
    @GetMapping("/week/looks-on")
    ResponseEntity<Void> looksOn() {
        ResponseEntity.HeadersBuilder<?> answer = ResponseEntity.noContent();
        return work.looksOn()
                ? answer.build()
                : answer.header("HX-Refresh", "true").build();
    }

    @GetMapping("/week/calendar")
    ResponseEntity<byte[]> calendar(@RequestParam(name = "week", defaultValue = "") String typed) {
        IsoWeek week = WeekJson.week(typed);
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "calendar", StandardCharsets.UTF_8))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename("week-" + week + ".ics")
                                .build()
                                .toString())
                .body(new WeekCalendar(work.week(week)).text().getBytes(StandardCharsets.UTF_8));
    }

    @GetMapping("/week/steps/{id:\\d{1,18}}")
    ModelAndView step(@PathVariable("id") long id) {
        return stepPage(id, null, List.of(), HttpStatus.OK);
    }

    @PostMapping("/week/steps/{id:\\d{1,18}}/day")
    Object pin(
            @PathVariable("id") long id,
            @RequestParam(name = "day", defaultValue = "") String typed,
            RedirectAttributes flash) {
        try {
            LocalDate day = WeekJson.day(typed);
            WorkStep step = work.pin(id, day);
            flash.addFlashAttribute(
                    "notice",
                    "“" + step.title() + "” is pinned to " + formats.day(day)
                            + ". Lay the work again to move it there.");
            return redirect("/week?week=" + IsoWeek.of(day));
        } catch (InvalidInputException e) {
            return stepPage(id, typed, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            ModelAndView page = stepPage(id, typed, List.of(), HttpStatus.CONFLICT);
            page.addObject("conflict", e.getMessage());
            return page;
        }
    }

    @PostMapping("/week/steps/{id:\\d{1,18}}/free")
    Object unpin(@PathVariable("id") long id, RedirectAttributes flash) {
        WorkStep step = work.unpin(id);
        flash.addFlashAttribute(
                "notice", "“" + step.title() + "” may lie on any day again. Lay the work again to move it.");
        return redirect("/week?week=" + shownIn(step));
    }

    @GetMapping("/week/glues")
    ModelAndView glues() {
        return gluePage(List.of(), HttpStatus.OK);
    }

    @PostMapping("/week/glues")
    Object chooseGlue(
            @RequestParam(name = "design", defaultValue = "") String design,
            @RequestParam(name = "glue", defaultValue = "") String glue,
            RedirectAttributes flash) {
        try {
            work.chooseGlue(design, Optional.of(glue.strip()).filter(g -> !g.isEmpty()));
            flash.addFlashAttribute("notice", "Saved for " + design + ". It holds from the next joint that is glued.");
            return redirect("/week/glues");
        } catch (InvalidInputException e) {
            return gluePage(e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
    }

    /** This week when it has orders, else the next one that has, else this week. */
    private IsoWeek atHand() {
        IsoWeek now = IsoWeek.of(LocalDate.now(clock));
        return orders.weeks().stream()
                .filter(w -> w.compareTo(now) >= 0)
                .findFirst()
                .orElse(now);
    }

    private ModelAndView wrongWeek(String typed, MeasureFormatException e) {
        ModelAndView page = page(
                atHand(),
                List.of(new FieldError("/week", "Week", typed, String.valueOf(e.getMessage()))),
                HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("typed", typed);
        return page;
    }

    private ModelAndView page(IsoWeek week, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("week/week");
        page.setStatus(status);
        page.addObject(
                "view", WeekView.of(work.week(week), book.workshop().workshop().hands(), clock.getZone()));
        TreeSet<IsoWeek> weeks = new TreeSet<>(orders.weeks());
        weeks.add(week);
        weeks.add(IsoWeek.of(LocalDate.now(clock)));
        page.addObject(
                "weeks",
                weeks.stream().map(w -> new Choice(w.toString(), w.toString())).collect(Collectors.toList()));
        page.addObject("typed", week.toString());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private ModelAndView stepPage(long id, @Nullable String typed, List<FieldError> errors, HttpStatus status) {
        Bench.Card card = bench.card(id);
        ModelAndView page = new ModelAndView("week/step");
        page.setStatus(status);
        page.addObject("card", card);
        page.addObject("week", shownIn(card.step()));
        page.addObject(
                "chosen",
                typed != null
                        ? typed
                        : card.step()
                                .pinned()
                                .or(() -> card.step()
                                        .planned()
                                        .map(p -> p.start()
                                                .atZone(clock.getZone())
                                                .toLocalDate()))
                                .map(LocalDate::toString)
                                .orElse(""));
        page.addObject("days", days());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    /** The open days from today on. */
    private List<Choice> days() {
        List<Choice> days = new ArrayList<>();
        IsoWeek first = IsoWeek.of(LocalDate.now(clock));
        for (int ahead = 0; ahead < WEEKS_OFFERED; ahead++) {
            work.week(IsoWeek.of(first.monday().plusDays(7L * ahead))).days().stream()
                    .filter(d -> d.closed().isEmpty() && !d.day().isBefore(LocalDate.now(clock)))
                    .forEach(d -> days.add(new Choice(d.day().toString(), formats.day(d.day()))));
        }
        return days;
    }

    private String shownIn(WorkStep step) {
        return step.planned()
                .map(p -> IsoWeek.of(p.start().atZone(clock.getZone()).toLocalDate())
                        .toString())
                .orElse(step.neck().week());
    }

    private ModelAndView gluePage(List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("week/glues");
        page.setStatus(status);
        List<Choice> glues = new ArrayList<>();
        String own = book.workshop()
                .workshop()
                .glue()
                .flatMap(book::glue)
                .map(g -> g.glue().name())
                .orElse("none");
        glues.add(new Choice("", "the shop’s own (" + own + ")"));
        book.glues().forEach(g -> glues.add(new Choice(g.glue().code(), g.glue().name())));
        page.addObject("glues", glues);
        page.addObject(
                "designs",
                designs.all().stream()
                        .map(d -> new DesignGlue(
                                d.code(), d.name(), work.glueOf(d.code()).orElse("")))
                        .toList());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private static RedirectView redirect(String to) {
        RedirectView view = new RedirectView(to, true);
        view.setExposeModelAttributes(false);
        return view;
    }
}
