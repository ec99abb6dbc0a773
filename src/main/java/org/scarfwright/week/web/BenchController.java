package org.scarfwright.week.web;

import jakarta.servlet.http.HttpServletResponse;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.StepKind;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.Bench;
import org.scarfwright.week.PlanPapers;
import org.scarfwright.week.WorkStep;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseCookie;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.CookieValue;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.servlet.view.RedirectView;

/** The bench view: one step at a time, beside the saw. */
@Controller
class BenchController {
    /** Remembers on this phone who works with it. */
    private static final String WHO = "bench-who";

    private static final int LONGEST_NAME = 40;

    private final Bench bench;
    private final PlanPapers papers;
    private final Clock clock;

    BenchController(Bench bench, PlanPapers papers, Clock clock) {
        this.bench = bench;
        this.papers = papers;
        this.clock = clock;
    }

    /** The day's work, at the step that can be done now. */
    @GetMapping("/bench")
    ModelAndView today(
            @RequestParam(name = "day", defaultValue = "") String day,
            @CookieValue(name = WHO, defaultValue = "") String who) {
        try {
            return page(
                    day.isBlank() ? LocalDate.now(clock) : WeekJson.day(day), null, who, new Typed("", "", List.of()));
        } catch (InvalidInputException e) {
            return page(LocalDate.now(clock), null, who, new Typed("", "", e.errors()));
        }
    }

    @GetMapping("/bench/{id:\\d{1,18}}")
    ModelAndView step(@PathVariable("id") long id, @CookieValue(name = WHO, defaultValue = "") String who) {
        return at(id, who, new Typed("", "", List.of()));
    }

    @PostMapping("/bench/{id:\\d{1,18}}/start")
    Object start(
            @PathVariable("id") long id,
            @RequestParam(name = "who", defaultValue = "") String who,
            HttpServletResponse response) {
        return act(id, who, new Typed("", "", List.of()), response, () -> {
            bench.start(id, name(who));
            return "/bench/" + id;
        });
    }

    @PostMapping("/bench/{id:\\d{1,18}}/done")
    Object done(
            @PathVariable("id") long id,
            @RequestParam(name = "who", defaultValue = "") String who,
            @RequestParam(name = "minutes", defaultValue = "") String minutes,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return act(id, who, new Typed(minutes, "", List.of()), response, () -> {
            WorkStep step = bench.done(id, minutes(minutes), name(who)).step();
            flash.addFlashAttribute("notice", "Done: " + step.title() + ".");
            flash.addFlashAttribute("doneStep", id);
            if (step.kind() == StepKind.CUT) {
                flash.addFlashAttribute("cutPiece", step.needs().piece().orElse(null));
            }
            return "/bench";
        });
    }

    @PostMapping("/bench/{id:\\d{1,18}}/else")
    Object somethingElse(
            @PathVariable("id") long id,
            @RequestParam(name = "who", defaultValue = "") String who,
            @RequestParam(name = "reason", defaultValue = "") String reason,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return act(id, who, new Typed("", reason, List.of()), response, () -> {
            WorkStep step = bench.somethingElse(id, reason, name(who)).step();
            flash.addFlashAttribute(
                    "notice", step.neck().title() + " waits. Lay the week again to give its time to others.");
            return "/bench/" + id;
        });
    }

    @PostMapping("/bench/{id:\\d{1,18}}/on")
    Object goOn(@PathVariable("id") long id, HttpServletResponse response) {
        return act(id, "", new Typed("", "", List.of()), response, () -> {
            bench.goOn(id);
            return "/bench/" + id;
        });
    }

    @PostMapping("/bench/{id:\\d{1,18}}/back")
    Object takeBack(@PathVariable("id") long id, HttpServletResponse response, RedirectAttributes flash) {
        return act(id, "", new Typed("", "", List.of()), response, () -> {
            bench.takeBack(id);
            flash.addFlashAttribute("notice", "Taken back, as if it had not been begun.");
            return "/bench/" + id;
        });
    }

    /** What a person typed, and what is wrong with it. */
    private record Typed(String minutes, String reason, List<FieldError> errors) {
        Typed with(List<FieldError> found) {
            return new Typed(minutes, reason, found);
        }
    }

    private interface Act {
        String leadsTo();
    }

    private Object act(long id, String who, Typed typed, HttpServletResponse response, Act act) {
        try {
            RedirectView view = new RedirectView(act.leadsTo(), true);
            view.setExposeModelAttributes(false);
            view.setStatusCode(HttpStatus.SEE_OTHER);
            remember(who, response);
            return view;
        } catch (InvalidInputException e) {
            return at(id, who, typed.with(e.errors()));
        } catch (ConflictException e) {
            ModelAndView page = at(id, who, typed);
            page.setStatus(HttpStatus.CONFLICT);
            page.addObject("conflict", e.getMessage());
            return page;
        }
    }

    private static void remember(String who, HttpServletResponse response) {
        if (!who.isBlank()) {
            response.addHeader(
                    HttpHeaders.SET_COOKIE,
                    ResponseCookie.from(WHO, URLEncoder.encode(name(who), StandardCharsets.UTF_8))
                            .path("/bench")
                            .httpOnly(true)
                            .sameSite("Lax")
                            .maxAge(Duration.ofDays(365))
                            .build()
                            .toString());
        }
    }

    static OptionalInt minutes(String typed) {
        if (typed.isBlank()) {
            return OptionalInt.empty();
        }
        try {
            return OptionalInt.of(Integer.parseInt(typed.strip()));
        } catch (NumberFormatException e) {
            throw new InvalidInputException(new FieldError(
                    "/minutes",
                    "Minutes",
                    typed,
                    "must be whole minutes from 0 to " + Bench.LONGEST + ", for example 25"));
        }
    }

    /** @throws InvalidInputException when the name is too long */
    static String name(String who) {
        String name = who.strip();
        if (name.length() > LONGEST_NAME) {
            throw new InvalidInputException(
                    new FieldError("/who", "Who", who, "must have at most " + LONGEST_NAME + " characters"));
        }
        return name;
    }

    private ModelAndView at(long id, String who, Typed typed) {
        WorkStep step = bench.card(id).step();
        LocalDate day = step.planned()
                .map(p -> p.start().atZone(clock.getZone()).toLocalDate())
                .filter(d -> d.isAfter(LocalDate.now(clock)))
                .orElse(LocalDate.now(clock));
        return page(day, id, who, typed);
    }

    private ModelAndView page(LocalDate day, @Nullable Long id, String who, Typed typed) {
        List<Bench.Card> cards = bench.day(day);
        Optional<Bench.Card> now = id != null ? Optional.of(bench.card(id)) : atHand(cards);
        ModelAndView page = new ModelAndView("week/bench");
        page.setStatus(typed.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("shownDay", day);
        page.addObject("cards", cards);
        page.addObject("nextDay", now.isPresent() ? null : bench.next(day).orElse(null));
        page.addObject("now", now.map(c -> BenchView.of(c, papers)).orElse(null));
        page.addObject(
                "clocks",
                bench.curing().stream()
                        .map(c -> BenchView.Clockface.of(c, clock))
                        .toList());
        page.addObject("person", decoded(who));
        page.addObject("typedMinutes", typed.minutes());
        page.addObject("typedReason", typed.reason());
        page.addObject("errorList", typed.errors());
        page.addObject("errors", typed.errors().isEmpty() ? Map.of() : FieldErrors.byField(typed.errors()));
        return page;
    }

    private static String decoded(String who) {
        try {
            String name = URLDecoder.decode(who, StandardCharsets.UTF_8);
            return name.length() > LONGEST_NAME ? "" : name;
        } catch (IllegalArgumentException e) {
            return ""; // a cookie somebody wrote by hand
        }
    }

    /** The first step that can be done now, else the first that is not done. */
    private static Optional<Bench.Card> atHand(List<Bench.Card> cards) {
        return cards.stream()
                .filter(c -> !c.step().isDone() && c.waitsFor().isEmpty())
                .findFirst()
                .or(() -> cards.stream().filter(c -> !c.step().isDone()).findFirst());
    }
}
