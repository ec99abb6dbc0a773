package org.scarfwright.ledger.web;

import java.util.List;
import java.util.Map;
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
            @RequestParam(name = "page", defaultValue = "1") String page) {
        ActList acts = ledger.acts(piece, number(page), ON_PAGE);
        List<Balance.Line> lines = ledger.lines();
        Volume in = lines.stream().map(Balance.Line::in).reduce(Volume.ZERO, Volume::plus);
        Volume out = lines.stream().map(Balance.Line::out).reduce(Volume.ZERO, Volume::plus);
        ModelAndView view = new ModelAndView("ledger/ledger");
        view.addObject("piece", piece.strip());
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
        return page;
    }

    @PostMapping("/ledger/check")
    String checkNow() {
        verification.run();
        return "redirect:/ledger/check";
    }

    /** A page that is no number is the first one: a mistyped address should still show the ledger. */
    private static int number(String page) {
        return page.matches("[1-9]\\d{0,6}") ? Integer.parseInt(page) : 1;
    }
}
