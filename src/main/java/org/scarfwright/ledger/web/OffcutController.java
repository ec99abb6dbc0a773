package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Entry;
import org.scarfwright.ledger.Losses;
import org.scarfwright.ledger.Offcuts;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Offcuts that are not worth keeping, and scrapping them as one act. */
@Controller
@Tag(name = "Yield", description = "What became of the wood, added up from the ledger")
class OffcutController {
    private final Offcuts offcuts;
    private final Losses losses;

    OffcutController(Offcuts offcuts, Losses losses) {
        this.offcuts = offcuts;
        this.losses = losses;
    }

    /** An offcut as a row; {@code stamp} is its code and the version that was seen. */
    record Row(Piece piece, String size, String stamp, boolean chosen) {}

    /** An offcut. */
    @Schema(name = "Offcut")
    record OffcutJson(
            String code,

            @Schema(description = "To be sent back when it is scrapped, with POST /api/ledger/removals")
            long version,

            LocalDate since,
            @Nullable String place,
            BigDecimal volumeMm3) {}

    @GetMapping("/yield/offcuts")
    ModelAndView show(@RequestParam(name = "months", defaultValue = "" + Offcuts.USUAL_MONTHS) String months) {
        return page(months, Set.of(), Map.of(), List.of(), null);
    }

    @PostMapping("/yield/offcuts")
    ModelAndView scrap(@RequestParam MultiValueMap<String, String> form, RedirectAttributes after) {
        Set<String> stamps = new HashSet<>(form.getOrDefault("piece", List.of()));
        Map<String, String> words = form.toSingleValueMap();
        String months = words.getOrDefault("months", "");
        try {
            Entry entry = losses.remove(
                    stamps.stream().map(OffcutController::stamp).toList(),
                    PieceState.SCRAPPED,
                    words.getOrDefault("who", "").strip(),
                    words.getOrDefault("why", "").strip());
            after.addFlashAttribute(
                    "notice",
                    stamps.size() == 1 ? "One offcut is scrapped." : stamps.size() + " offcuts are scrapped.");
            after.addAttribute("id", entry.id());
            return new ModelAndView("redirect:/ledger/{id}");
        } catch (InvalidInputException e) {
            return page(months, stamps, words, e.errors(), null);
        } catch (ConflictException e) {
            return page(months, stamps, words, List.of(), e.getMessage());
        }
    }

    /** Something that is no stamp names no piece, and is refused as one that is not there. */
    private static Rack.PieceStamp stamp(String text) {
        int gap = text.lastIndexOf(' ');
        String version = text.substring(gap + 1);
        return gap > 0 && version.matches("\\d{1,18}")
                ? new Rack.PieceStamp(text.substring(0, gap), Long.parseLong(version))
                : new Rack.PieceStamp(text, -1);
    }

    @GetMapping("/api/yield/offcuts")
    @ResponseBody
    @Operation(
            summary = "Rests on the rack that no accepted plan ever took",
            description =
                    "months: how long ago they came there at the least, usually 6. At most 500, the oldest first.")
    List<OffcutJson> list(@RequestParam(name = "months", defaultValue = "" + Offcuts.USUAL_MONTHS) String months) {
        List<FieldError> errors = new ArrayList<>();
        int asked = months(months, errors);
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return offcuts.unwanted(asked).stream()
                .map(p -> new OffcutJson(
                        p.code(), p.version(), p.since(), p.place(), p.volume().toMm3()))
                .toList();
    }

    private static int months(String text, List<FieldError> errors) {
        if (text.strip().matches("\\d{1,3}") && Integer.parseInt(text.strip()) <= Offcuts.MOST_MONTHS) {
            return Integer.parseInt(text.strip());
        }
        errors.add(new FieldError(
                "/months",
                "Months",
                text,
                "is not a whole number from 0 to " + Offcuts.MOST_MONTHS + "; write for example 6"));
        return Offcuts.USUAL_MONTHS;
    }

    private ModelAndView page(
            String months,
            Set<String> chosen,
            Map<String, String> typed,
            List<FieldError> wrong,
            @Nullable String conflict) {
        List<FieldError> errors = new ArrayList<>();
        List<Piece> found = offcuts.unwanted(months(months, errors));
        boolean refused = !errors.isEmpty();
        errors.addAll(wrong);
        ModelAndView page = new ModelAndView("ledger/offcuts");
        page.setStatus(
                conflict != null
                        ? HttpStatus.CONFLICT
                        : errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("months", months);
        page.addObject("refused", refused);
        page.addObject(
                "offcuts",
                found.stream()
                        .map(p -> {
                            String stamp = p.code() + " " + p.version();
                            return new Row(p, PieceWords.size(p), stamp, typed.isEmpty() || chosen.contains(stamp));
                        })
                        .toList());
        page.addObject("sum", found.stream().map(Piece::volume).reduce(Volume.ZERO, Volume::plus));
        page.addObject("typed", typed);
        page.addObject("conflict", conflict);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }
}
