package org.scarfwright.ledger.web;

import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.ActWords;
import org.scarfwright.ledger.Balance;
import org.scarfwright.ledger.Entry;
import org.scarfwright.ledger.Ledger;
import org.scarfwright.ledger.Ledger.ActList;
import org.scarfwright.ledger.Verification;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What happened, that it adds up, and taking it back. */
@Controller
class LedgerController {
    private static final int ON_PAGE = 50;

    /** A small shop's ledger is gone through before anybody has to look again. */
    static final Duration PATIENCE = Duration.ofMillis(500);

    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
    private static final LocalDate LATEST = LocalDate.of(9998, 12, 31);

    private final Ledger ledger;
    private final Verification verification;
    private final Shop shop;

    LedgerController(Ledger ledger, Verification verification, Shop shop) {
        this.ledger = ledger;
        this.verification = verification;
        this.shop = shop;
    }

    /** A line of the balance; a volume is empty where there is none. */
    record Line(String kind, long acts, Volume in, Volume out) {}

    @GetMapping("/ledger")
    ModelAndView show(
            @RequestParam(name = "piece", defaultValue = "") String piece,
            @RequestParam(name = "until", defaultValue = "") String until,
            @RequestParam(name = "before", defaultValue = "") String before,
            @RequestParam(name = "after", defaultValue = "") String after) {
        List<FieldError> errors = new ArrayList<>();
        ActList acts = acts(piece, day(until.strip(), errors), before, after);
        List<Balance.Line> lines = ledger.lines();
        Volume in = lines.stream().map(Balance.Line::in).reduce(Volume.ZERO, Volume::plus);
        Volume out = lines.stream().map(Balance.Line::out).reduce(Volume.ZERO, Volume::plus);
        ModelAndView view = new ModelAndView("ledger/ledger");
        view.addObject("piece", piece.strip());
        view.setStatus(errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        view.addObject("until", until.strip());
        view.addObject("narrowed", !piece.isBlank() || !until.isBlank());
        view.addObject("errorList", errors);
        view.addObject("errors", FieldErrors.byField(errors));
        view.addObject("acts", acts);
        view.addObject("rows", acts.acts().stream().map(LedgerView.ActRow::of).toList());
        view.addObject("broughtIn", in);
        view.addObject("takenOut", out);
        view.addObject("accounted", in.minus(out));
        view.addObject("checked", verification.last().orElse(null));
        view.addObject(
                "lines",
                lines.stream()
                        .map(l -> new Line(ActWords.kind(l.kind()), l.acts(), l.in(), l.out()))
                        .toList());
        return view;
    }

    @GetMapping("/ledger/{id:\\d{1,18}}")
    ModelAndView entry(@PathVariable("id") long id) {
        return entry(id, Map.of(), List.of(), null);
    }

    @PostMapping("/ledger/{id:\\d{1,18}}/undo")
    ModelAndView undo(@PathVariable("id") long id, @RequestParam Map<String, String> form, RedirectAttributes after) {
        try {
            Entry undone = ledger.undo(
                    id, EntryWords.who(form.getOrDefault("who", "")), EntryWords.why(form.getOrDefault("why", "")));
            after.addFlashAttribute("notice", "Entry " + id + " is taken back.");
            after.addAttribute("id", undone.id());
            return new ModelAndView("redirect:/ledger/{id}");
        } catch (InvalidInputException e) {
            return entry(id, form, e.errors(), null);
        } catch (ConflictException e) {
            return entry(id, form, List.of(), e.getMessage());
        }
    }

    private ModelAndView entry(long id, Map<String, String> typed, List<FieldError> errors, @Nullable String conflict) {
        Entry entry = ledger.entry(id).orElseThrow(() -> new NotFoundException("There is no entry " + id + "."));
        ModelAndView page = new ModelAndView("ledger/entry");
        page.setStatus(
                conflict != null
                        ? HttpStatus.CONFLICT
                        : errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("entry", entry);
        page.addObject("kind", ActWords.kind(entry.kind()));
        page.addObject("acts", LedgerView.acts(entry));
        page.addObject("outcomes", LedgerView.outcomes(entry));
        page.addObject("sum", LedgerView.sum(entry));
        page.addObject(
                "newPieces",
                String.join(
                        ", ",
                        entry.undoneBy() != null || entry.undoes() != null
                                ? List.of()
                                : entry.outcomes().stream()
                                        .filter(o -> o.kind() == Outcome.Kind.REST && o.toPiece() != null)
                                        .map(Outcome::toPiece)
                                        .toList()));
        page.addObject("refusal", ledger.refusal(id).orElse(null));
        page.addObject("currency", shop.settings().currency());
        page.addObject("typed", typed);
        page.addObject("conflict", conflict);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    @GetMapping("/ledger/check")
    ModelAndView check() {
        ModelAndView page = new ModelAndView("ledger/check");
        page.addObject("report", verification.last().orElse(null));
        page.addObject("going", verification.going().orElse(null));
        return page;
    }

    @PostMapping("/ledger/check")
    String checkNow() {
        verification.begin(PATIENCE);
        return "redirect:/ledger/check";
    }

    /** A place that is none is the newest: a mistyped address should still show the ledger. */
    private ActList acts(String piece, @Nullable LocalDate until, String before, String after) {
        Optional<Ledger.From> from = Ledger.Spot.read(before)
                .map(s -> new Ledger.From(s, true))
                .or(() -> Ledger.Spot.read(after).map(s -> new Ledger.From(s, false)))
                .or(() -> Optional.ofNullable(until).flatMap(ledger::after).map(s -> new Ledger.From(s, true)));
        return from.map(f -> ledger.acts(piece, f, ON_PAGE)).orElseGet(() -> ledger.newest(piece, ON_PAGE));
    }

    private static @Nullable LocalDate day(String typed, List<FieldError> errors) {
        if (typed.isEmpty()) {
            return null;
        }
        try {
            LocalDate day = LocalDate.parse(typed);
            if (!day.isBefore(EARLIEST) && !day.isAfter(LATEST)) {
                return day;
            }
        } catch (DateTimeParseException e) {
            // Told below, as a day that is far off is.
        }
        errors.add(new FieldError("/until", "Until", typed, "is not a day; write for example 2026-11-30"));
        return null;
    }
}
