package org.scarfwright.matching.web;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Hands;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.Orders;
import org.scarfwright.shop.Shop;
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
import org.springframework.web.servlet.view.RedirectView;

/** The Match page: choose a week, match it, look at the plan, accept it or undo it, print it. */
@Controller
class MatchController {
    /** A search that ends within this leads straight to its plan. */
    static final Duration QUICK = Duration.ofSeconds(1);

    private static final PlanShow FIRST = PlanShow.of("", "1");

    private final Plans plans;
    private final MatchRuns runs;
    private final Hands hands;
    private final PlanViews views;
    private final Orders orders;
    private final WeekStandings standings;
    private final Shop shop;
    private final Clock clock;

    MatchController(
            Plans plans,
            MatchRuns runs,
            Hands hands,
            PlanViews views,
            Orders orders,
            WeekStandings standings,
            Shop shop,
            Clock clock) {
        this.plans = plans;
        this.runs = runs;
        this.hands = hands;
        this.views = views;
        this.orders = orders;
        this.standings = standings;
        this.shop = shop;
        this.clock = clock;
    }

    @GetMapping("/match")
    ModelAndView week(@RequestParam(name = "week", required = false) String typed) {
        if (typed == null || typed.isBlank()) {
            return weekPage(asking(standings.weekAtHand().toString()), List.of(), HttpStatus.OK);
        }
        try {
            return weekPage(asking(IsoWeek.parse(typed).toString()), List.of(), HttpStatus.OK);
        } catch (MeasureFormatException e) {
            return weekPage(asking(typed), List.of(weekError(typed, e)), HttpStatus.UNPROCESSABLE_CONTENT);
        }
    }

    @PostMapping("/match")
    Object match(@ModelAttribute AskForm asked) {
        try {
            MatchRun run = runs.start(asked.readWeek(), asked.read());
            return redirect(RunController.leadsTo(runs.await(run.id(), QUICK)));
        } catch (InvalidInputException e) {
            return weekPage(asked, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            ModelAndView page = weekPage(asked, List.of(), HttpStatus.CONFLICT);
            page.addObject("conflict", e.getMessage());
            return page;
        }
    }

    private static AskForm asking(String week) {
        return new AskForm(week, List.of(), "");
    }

    /** The page of a plan, with the answer when one was asked for. */
    @GetMapping("/match/{id:\\d{1,18}}")
    ModelAndView plan(
            @PathVariable("id") long id,
            @RequestParam(name = "order", defaultValue = "") String order,
            @RequestParam(name = "piece", defaultValue = "") String piece,
            @RequestParam(name = "q", defaultValue = "") String find,
            @RequestParam(name = "page", defaultValue = "1") String number,
            @ModelAttribute BlankForm blank) {
        ModelAndView page = planPage("matching/plan", find(id), PlanShow.of(find, number));
        page.addObject("askedOrder", order);
        page.addObject("askedPiece", piece);
        if (!order.isBlank() || !piece.isBlank()) {
            try {
                page.addObject("whyNot", plans.whyNot(id, order, piece));
            } catch (InvalidInputException e) {
                page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                page.addObject("errorList", e.errors());
                page.addObject("errors", FieldErrors.byField(e.errors()));
            }
        }
        page.addObject("blank", blank);
        if (!blank.isEmpty()) {
            try {
                BlankForm.Sizes s = blank.read(shop.settings().unit());
                page.addObject("blankAnswers", plans.oneMore(id, s.length(), s.width(), s.thickness()));
            } catch (InvalidInputException e) {
                page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                page.addObject("errorList", e.errors());
                page.addObject("errors", FieldErrors.byField(e.errors()));
            }
        }
        return page;
    }

    @GetMapping("/match/{id:\\d{1,18}}/print")
    ModelAndView print(@PathVariable("id") long id) {
        return planPage("matching/print", find(id), PlanShow.ALL);
    }

    @PostMapping("/match/{id:\\d{1,18}}/accept")
    Object accept(@PathVariable("id") long id, RedirectAttributes flash) {
        try {
            Plan plan = plans.accept(id);
            int pieces = plan.layouts().size();
            flash.addFlashAttribute(
                    "notice",
                    "Accepted. " + (pieces == 1 ? "One piece is" : pieces + " pieces are")
                            + " reserved for this plan; undo frees them again.");
            return redirect("/match/" + id);
        } catch (ConflictException e) {
            return refused(id, e);
        }
    }

    @PostMapping("/match/{id:\\d{1,18}}/undo")
    Object undo(@PathVariable("id") long id, RedirectAttributes flash) {
        try {
            plans.undo(id);
            flash.addFlashAttribute("notice", "Undone. Every piece this plan held is free again.");
            return redirect("/match/" + id);
        } catch (ConflictException e) {
            return refused(id, e);
        }
    }

    /** A decision made beside a neck of a plan, or beside an order of a week. */
    @PostMapping("/match/hands")
    Object decide(
            @RequestParam(name = "week", defaultValue = "") String week,
            @RequestParam(name = "plan", defaultValue = "") String plan,
            @ModelAttribute HandForm form,
            RedirectAttributes flash) {
        try {
            Hands.Kept kept = hands.add(weekOf(week), form.read());
            flash.addFlashAttribute("notice", kept.hand().words() + " It holds from the next match on.");
            return redirect(isPlan(plan) ? "/match/" + plan + "#hands" : "/match?week=" + week);
        } catch (InvalidInputException e) {
            return refusedHand(week, plan, e.errors());
        }
    }

    @PostMapping("/match/hands/{id:\\d{1,18}}/undo")
    Object takeBack(
            @PathVariable("id") long id,
            @RequestParam(name = "week", defaultValue = "") String week,
            @RequestParam(name = "plan", defaultValue = "") String plan,
            RedirectAttributes flash) {
        try {
            hands.undo(weekOf(week), id);
            flash.addFlashAttribute("notice", "Taken back. The next match is free to choose there again.");
        } catch (InvalidInputException e) {
            return refusedHand(week, plan, e.errors());
        } catch (NotFoundException e) {
            flash.addFlashAttribute("notice", "That was taken back already.");
        }
        return redirect(isPlan(plan) ? "/match/" + plan + "#hands" : "/match?week=" + week);
    }

    private ModelAndView refusedHand(String week, String plan, List<FieldError> errors) {
        if (!isPlan(plan)) {
            return weekPage(asking(week), errors, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        ModelAndView page = planPage("matching/plan", find(Long.parseLong(plan)), FIRST);
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("errorList", errors);
        return page;
    }

    private static boolean isPlan(String text) {
        return text.matches("\\d{1,18}");
    }

    private static IsoWeek weekOf(String typed) {
        try {
            return IsoWeek.parse(typed);
        } catch (MeasureFormatException e) {
            throw new InvalidInputException(weekError(typed, e));
        }
    }

    private Plan find(long id) {
        return plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + "."));
    }

    private ModelAndView planPage(String template, Plan plan, PlanShow show) {
        ModelAndView page = new ModelAndView(template);
        page.addObject("plan", views.view(plan, show));
        page.addObject("hands", hands.of(IsoWeek.parse(plan.week())));
        page.addObject("origin", plan.asked().origin());
        page.addObject("relatives", relatives(plan));
        page.addObject("compareWith", compareWith(plan));
        page.addObject(
                "givenUp",
                plans.givenUp(plan.id()).stream()
                        .collect(Collectors.toMap(
                                g -> g.neck().order() + " " + g.neck().number(), g -> g)));
        page.addObject("errorList", List.of());
        page.addObject("unitShown", shop.settings().unit().symbol());
        page.addObject("errors", Map.of());
        page.addObject(
                "orderChoices",
                Stream.concat(
                                plan.pairings().stream().map(Plan.Pairing::order),
                                plan.unfilled().stream().map(Plan.Unfilled::order))
                        .distinct()
                        .sorted()
                        .map(o -> new Choice(o, o))
                        .toList());
        return page;
    }

    /** Plans that come from this one, or from the one it comes from. */
    private List<Plans.Relative> relatives(Plan plan) {
        Plan.Origin origin = plan.asked().origin();
        return Stream.concat(
                        plans.relatives(plan.id()).stream(),
                        origin == null
                                ? Stream.of()
                                : plans.relatives(origin.plan()).stream()
                                        .filter(r -> r.id() != plan.id() && r.kind() != Plan.OriginKind.NEAR_EQUAL))
                .toList();
    }

    /** The plan it comes from, else the one of its week that was made last before it, else the first one made after. */
    private @Nullable Long compareWith(Plan plan) {
        Plan.Origin origin = plan.asked().origin();
        if (origin != null) {
            return origin.plan();
        }
        List<Long> others = plans.ofWeek(IsoWeek.parse(plan.week())).stream()
                .map(Plan::id)
                .filter(id -> id != plan.id())
                .toList();
        return others.stream()
                .filter(id -> id < plan.id())
                .findFirst()
                .orElse(others.isEmpty() ? null : others.get(others.size() - 1));
    }

    private ModelAndView refused(long id, ConflictException e) {
        ModelAndView page = planPage("matching/plan", find(id), FIRST);
        page.setStatus(HttpStatus.CONFLICT);
        page.addObject("conflict", e.getMessage());
        return page;
    }

    private ModelAndView weekPage(AskForm asked, List<FieldError> errors, HttpStatus status) {
        runs.warmUp();
        String week = Objects.requireNonNullElse(asked.week(), "");
        ModelAndView page = new ModelAndView("matching/week");
        page.setStatus(status);
        page.addObject("week", week);
        page.addObject("asked", asked);
        page.addObject("weeks", choices(week));
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        page.addObject("standing", isWeek(week) ? standings.of(IsoWeek.parse(week)) : null);
        page.addObject("hands", isWeek(week) ? hands.of(IsoWeek.parse(week)) : List.of());
        page.addObject("runs", isWeek(week) ? runs.open(IsoWeek.parse(week)) : List.of());
        page.addObject("today", LocalDate.now(clock));
        return page;
    }

    private List<Choice> choices(String chosen) {
        TreeSet<IsoWeek> weeks = new TreeSet<>(orders.weeks());
        weeks.add(standings.weekAtHand());
        if (isWeek(chosen)) {
            weeks.add(IsoWeek.parse(chosen));
        }
        return weeks.stream().map(w -> new Choice(w.toString(), w.toString())).toList();
    }

    private static boolean isWeek(String text) {
        try {
            IsoWeek.parse(text);
            return true;
        } catch (MeasureFormatException e) {
            return false;
        }
    }

    private static FieldError weekError(String typed, MeasureFormatException e) {
        return new FieldError("/week", "Week", typed, String.valueOf(e.getMessage()));
    }

    static RedirectView redirect(String path) {
        RedirectView view = new RedirectView(path, true);
        view.setExposeModelAttributes(false);
        view.setStatusCode(HttpStatus.SEE_OTHER);
        return view;
    }
}
