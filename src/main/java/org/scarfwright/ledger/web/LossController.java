package org.scarfwright.ledger.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Entry;
import org.scarfwright.ledger.Losses;
import org.scarfwright.ledger.Losses.Neck;
import org.scarfwright.ledger.NeckOrigins;
import org.scarfwright.ledger.NeckOrigins.Origin;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Money;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Rack;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Scrapping and selling a piece, and where a neck's wood came from, with writing its parts off. */
@Controller
class LossController {
    private static final String SOLD = "sold";
    private static final List<Choice> WAYS =
            List.of(new Choice("scrapped", "It is scrapped"), new Choice(SOLD, "It is sold"));

    private final Losses losses;
    private final NeckOrigins origins;
    private final Rack rack;
    private final Shop shop;

    LossController(Losses losses, NeckOrigins origins, Rack rack, Shop shop) {
        this.losses = losses;
        this.origins = origins;
        this.rack = rack;
        this.shop = shop;
    }

    @GetMapping("/rack/{code}/away")
    ModelAndView ask(@PathVariable String code) {
        return page(find(code), Map.of(), List.of(), null);
    }

    @PostMapping("/rack/{code}/away")
    ModelAndView take(@PathVariable String code, @RequestParam Map<String, String> form, RedirectAttributes after) {
        Piece piece = find(code);
        boolean sold = form.getOrDefault("way", "").equals(SOLD);
        try {
            String seen = form.getOrDefault("seen", "");
            Entry entry = losses.remove(
                    List.of(new Rack.PieceStamp(piece.code(), seen.matches("\\d{1,18}") ? Long.parseLong(seen) : -1)),
                    sold ? PieceState.SOLD : PieceState.SCRAPPED,
                    form.getOrDefault("who", "").strip(),
                    why(sold, form));
            return toEntry(entry, piece.code() + (sold ? " is sold." : " is scrapped."), after);
        } catch (InvalidInputException e) {
            return page(piece, form, e.errors(), null);
        } catch (ConflictException e) {
            return page(find(code), form, List.of(), e.getMessage());
        }
    }

    /** The price stands before the person's words. */
    private String why(boolean sold, Map<String, String> form) {
        String why = form.getOrDefault("why", "").strip();
        String price = form.getOrDefault("price", "").strip();
        if (!sold || price.isEmpty()) {
            return why;
        }
        try {
            return ("For " + Money.parse(price) + " " + shop.settings().currency() + ". " + why).strip();
        } catch (MeasureFormatException e) {
            throw new InvalidInputException(new FieldError("/price", "Price", price, String.valueOf(e.getMessage())));
        }
    }

    private Piece find(String code) {
        return rack.find(code)
                .orElseThrow(() -> new NotFoundException(
                        "There is no piece “" + (code.length() > 40 ? code.substring(0, 40) + "…" : code) + "”."));
    }

    private ModelAndView page(
            Piece piece, Map<String, String> typed, List<FieldError> errors, @Nullable String conflict) {
        ModelAndView page = answer("ledger/away", typed, errors, conflict);
        page.addObject("code", piece.code());
        page.addObject("version", piece.version());
        page.addObject("size", PieceWords.size(piece));
        page.addObject("there", piece.state().isThere());
        page.addObject("pieceState", PieceWords.state(piece.state()));
        page.addObject("held", piece.state() != PieceState.ON_RACK);
        page.addObject("ways", WAYS);
        page.addObject("currency", shop.settings().currency());
        return page;
    }

    @GetMapping("/ledger/necks/{plan:\\d{1,18}}/{order}/{number:\\d{1,4}}")
    ModelAndView neck(@PathVariable long plan, @PathVariable String order, @PathVariable int number) {
        return neck(new Neck(plan, order, number), Map.of(), List.of(), null);
    }

    @PostMapping("/ledger/necks/{plan:\\d{1,18}}/{order}/{number:\\d{1,4}}")
    ModelAndView writeOff(
            @PathVariable long plan,
            @PathVariable String order,
            @PathVariable int number,
            @RequestParam Map<String, String> form,
            RedirectAttributes after) {
        Neck neck = new Neck(plan, order, number);
        try {
            Entry entry = losses.writeOff(
                    neck,
                    WriteOffForm.read(form, shop.settings().unit()),
                    form.getOrDefault("who", "").strip(),
                    form.getOrDefault("why", "").strip());
            return toEntry(entry, kept(entry), after);
        } catch (InvalidInputException e) {
            return neck(neck, form, e.errors(), null);
        } catch (ConflictException | NotFoundException e) {
            return neck(neck, form, List.of(), e.getMessage());
        }
    }

    private static String kept(Entry entry) {
        List<String> codes = entry.outcomes().stream()
                .filter(o -> o.kind() == Outcome.Kind.REST)
                .flatMap(o -> Stream.ofNullable(o.toPiece()))
                .toList();
        return "Written off."
                + (codes.isEmpty()
                        ? ""
                        : " " + String.join(" and ", codes) + (codes.size() == 1 ? " is" : " are")
                                + " new on the rack; print a label.")
                + " Take the neck out of its plan to make it again of other wood.";
    }

    private ModelAndView neck(
            Neck neck, Map<String, String> typed, List<FieldError> errors, @Nullable String conflict) {
        Origin origin = origins.of(neck)
                .orElseThrow(() -> new NotFoundException(
                        "No cut of " + neck.title() + " was recorded for plan " + neck.plan() + "."));
        ModelAndView page = answer("ledger/neck", typed, errors, conflict);
        page.addObject("neck", neck);
        page.addObject("origin", origin);
        page.addObject("unitShown", shop.settings().unit().symbol());
        page.addObject("currency", shop.settings().currency());
        return page;
    }

    private static ModelAndView answer(
            String template, Map<String, String> typed, List<FieldError> errors, @Nullable String conflict) {
        ModelAndView page = new ModelAndView(template);
        page.setStatus(
                conflict != null
                        ? HttpStatus.CONFLICT
                        : errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("typed", typed);
        page.addObject("conflict", conflict);
        page.addObject("errorList", new ArrayList<>(errors));
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private static ModelAndView toEntry(Entry entry, String notice, RedirectAttributes after) {
        after.addFlashAttribute("notice", notice);
        after.addAttribute("id", entry.id());
        return new ModelAndView("redirect:/ledger/{id}");
    }
}
