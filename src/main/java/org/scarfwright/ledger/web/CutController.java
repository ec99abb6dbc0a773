package org.scarfwright.ledger.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.CutRecording;
import org.scarfwright.ledger.CutRecording.Proposal;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.StripDrawing;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Recording a cut: what the plan says is filled in, only what differs is typed. */
@Controller
class CutController {
    private static final Pattern SECTION = Pattern.compile("section-(\\d{1,4})");

    /** For none: no section has this number. */
    private static final int NO_SECTION = 0;

    private final CutRecording recording;
    private final Shop shop;

    CutController(CutRecording recording, Shop shop) {
        this.recording = recording;
        this.shop = shop;
    }

    /** A waste as a field. */
    record WasteField(String name, String label) {}

    @GetMapping("/rack/{code}/cut")
    ModelAndView ask(@PathVariable String code, @RequestParam Map<String, String> asked) {
        return page(recording.propose(code, sections(asked)), asked, List.of(), null);
    }

    @PostMapping("/rack/{code}/cut")
    ModelAndView record(@PathVariable String code, @RequestParam Map<String, String> form, RedirectAttributes after) {
        List<Integer> chosen = sections(form);
        Proposal proposal = recording.propose(code, chosen);
        if (form.containsKey("look") || !shown(proposal).equals(form.getOrDefault("shown", ""))) {
            // The figures on the page are those of other sections than were chosen: they must be seen before they are
            // kept.
            return page(proposal, words(form), List.of(), null);
        }
        try {
            CutRecording.Recorded recorded =
                    recording.record(code, version(form.getOrDefault("seen", "")), chosen, form);
            after.addFlashAttribute("notice", "The cut is recorded.");
            after.addFlashAttribute("restCodes", String.join(", ", recorded.restCodes()));
            after.addAttribute("id", recorded.entry().id());
            return new ModelAndView("redirect:/ledger/{id}");
        } catch (InvalidInputException e) {
            return page(proposal, form, e.errors(), null);
        } catch (ConflictException e) {
            return page(recording.propose(code, chosen), form, List.of(), e.getMessage());
        }
    }

    /** Only who and why: the figures are filled in anew. */
    private static Map<String, String> words(Map<String, String> form) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("who", form.getOrDefault("who", ""));
        words.put("why", form.getOrDefault("why", ""));
        return words;
    }

    private static long version(String text) {
        return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }

    /** Empty where nobody was asked yet. */
    private static List<Integer> sections(Map<String, String> form) {
        List<Integer> chosen = new ArrayList<>();
        form.forEach((name, value) -> {
            Matcher m = SECTION.matcher(name);
            if (m.matches() && value.equals("true")) {
                chosen.add(Integer.parseInt(m.group(1)));
            }
        });
        if (chosen.isEmpty() && form.containsKey("shown") && !form.get("shown").isEmpty()) {
            chosen.add(NO_SECTION);
        }
        chosen.sort(null);
        return chosen;
    }

    private static String shown(Proposal proposal) {
        return String.join(" ", proposal.chosen().stream().map(String::valueOf).toList());
    }

    private ModelAndView page(
            Proposal proposal, Map<String, String> typed, List<FieldError> errors, @Nullable String conflict) {
        Map<String, String> values = new LinkedHashMap<>(proposal.fields());
        values.putAll(typed);
        ModelAndView page = new ModelAndView("ledger/cut");
        page.setStatus(
                conflict != null
                        ? HttpStatus.CONFLICT
                        : errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("piece", proposal.piece());
        page.addObject("size", PieceWords.size(proposal.piece()));
        page.addObject("there", proposal.piece().state().isThere());
        page.addObject("pieceState", PieceWords.state(proposal.piece().state()));
        page.addObject("drawing", StripDrawing.piece(PieceStrip.of(proposal.piece())));
        page.addObject("sheet", proposal);
        page.addObject("shown", shown(proposal));
        page.addObject(
                "wasteFields",
                proposal.wastes().stream()
                        .map(w -> new WasteField(w.name(), LedgerView.capital(LedgerView.cause(w.cause()))))
                        .toList());
        page.addObject("values", values);
        page.addObject("unitShown", shop.settings().unit().symbol());
        page.addObject("conflict", conflict);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }
}
