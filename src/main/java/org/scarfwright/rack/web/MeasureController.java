package org.scarfwright.rack.web;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.CellError;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChangedSinceException;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.Warp;
import org.scarfwright.rack.WrongPieceException;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Measuring a piece again: readings are added, nothing else changes. */
@Controller
class MeasureController {
    private final Rack rack;
    private final Pieces pieces;
    private final Shop shop;
    private final Formats formats;

    MeasureController(Rack rack, Pieces pieces, Shop shop, Formats formats) {
        this.rack = rack;
        this.pieces = pieces;
        this.shop = shop;
        this.formats = formats;
    }

    @GetMapping("/rack/{code}/measure")
    ModelAndView ask(@PathVariable String code) {
        return page(RackController.find(rack, code), new PieceCells(), List.of(), HttpStatus.OK);
    }

    @PostMapping("/rack/{code}/measure")
    ModelAndView measure(@PathVariable String code, @RequestParam Map<String, String> form, RedirectAttributes after) {
        Piece seen = RackController.find(rack, code);
        PieceCells cells = PieceCells.of(form::get);
        if (!PieceTag.of(seen).equals(form.getOrDefault("seen", ""))) {
            return page(seen, cells, List.of(changedSince(seen)), HttpStatus.CONFLICT);
        }
        try {
            Piece now = pieces.measure(seen, cells, LengthUnit.MM);
            after.addFlashAttribute("notice", notice(seen, now));
        } catch (WrongPieceException e) {
            List<FieldError> errors = e.errors().stream().map(CellError::onForm).toList();
            return page(seen, cells, errors, HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (PieceChangedSinceException e) {
            Piece now = RackController.find(rack, code);
            return page(now, cells, List.of(changedSince(now)), HttpStatus.CONFLICT);
        } catch (ConflictException e) {
            return page(
                    seen,
                    cells,
                    List.of(new FieldError("/", "This reading", "", "is not possible now. " + e.getMessage())),
                    HttpStatus.CONFLICT);
        }
        after.addAttribute("code", seen.code());
        return new ModelAndView("redirect:/rack/{code}");
    }

    /** A reading that is older than what is there is kept without counting, and a person is told so. */
    private String notice(Piece seen, Piece now) {
        if (now.version() == seen.version()) {
            return "That reading is there already; nothing was added.";
        }
        LocalDate warpOn = now.warp().readOn();
        boolean warpCounts = !now.warp().equals(seen.warp());
        boolean moistureCounts = now.moisture() != null && !now.moisture().equals(seen.moisture());
        if (warpCounts || moistureCounts) {
            return "The reading is saved"
                    + (warpCounts && warpOn != null ? "; what the piece can give is reckoned from it now." : ".");
        }
        return "The reading is saved among the earlier ones; the newest still counts.";
    }

    private static FieldError changedSince(Piece piece) {
        return new FieldError(
                "/",
                "Piece " + piece.code(),
                "",
                "was changed since you opened it. What you wrote is kept below; look at the piece in another window, and"
                        + " save again if it still holds");
    }

    private ModelAndView page(Piece piece, PieceCells cells, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("rack/measure");
        page.setStatus(status);
        page.addObject("code", piece.code());
        page.addObject("size", PieceWords.size(piece));
        page.addObject("seen", PieceTag.of(piece));
        page.addObject("cells", cells);
        page.addObject("hints", hints(piece));
        page.addObject(
                "unitShown",
                cells.has(PieceField.UNIT)
                        ? cells.get(PieceField.UNIT)
                        : shop.settings().unit().symbol());
        page.addObject("meters", PieceFormController.METERS);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    /** What each was read as last: an empty field keeps it. */
    private Map<String, String> hints(Piece piece) {
        Warp warp = piece.warp();
        Map<String, String> hints = new LinkedHashMap<>();
        hints.put("bow", "A straightedge on the hollow face, end to end: the widest gap." + last(warp, warp.bow()));
        hints.put("crook", "The same on the hollow edge." + last(warp, warp.crook()));
        hints.put("cup", "A straightedge across, where it is worst along the piece." + last(warp, warp.cup()));
        hints.put("twist", "Lift of the fourth corner with three corners down." + last(warp, warp.twist()));
        MoistureReading moisture = piece.moisture();
        hints.put(
                "moisture",
                moisture == null
                        ? "Not read so far."
                        : "Last " + moisture.content() + " on " + formats.day(moisture.readOn())
                                + ". Empty: not read this time.");
        return hints;
    }

    private String last(Warp warp, @Nullable Length length) {
        return warp.isMeasured()
                ? " Last " + formats.mm(length) + " on " + formats.day(warp.readOn()) + "; empty keeps it."
                : " Empty: none.";
    }
}
