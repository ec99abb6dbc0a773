package org.scarfwright.rack.web;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.CellError;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChangedSinceException;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.WrongPieceException;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Adding a piece by hand, and editing one. */
@Controller
class PieceFormController {
    private static final List<Choice> GRAINS = List.of(
            new Choice("", "Not judged"),
            new Choice("flat", "flat"),
            new Choice("rift", "rift"),
            new Choice("quarter", "quarter"));
    static final List<Choice> METERS = List.of(
            new Choice("", "Not recorded"),
            new Choice("pin", "pin meter"),
            new Choice("pinless", "pinless meter"),
            new Choice("oven", "oven drying"));

    /** Fields that are always in sight; the others stand under a heading that opens. */
    private static final Set<String> FIRST = Set.of("wood", "length", "width", "thickness");

    /** What another piece like one has in common with it. */
    private static final List<PieceField> ALIKE = List.of(
            PieceField.WOOD,
            PieceField.LAMINATION,
            PieceField.LENGTH,
            PieceField.WIDTH,
            PieceField.THICKNESS,
            PieceField.GRAIN,
            PieceField.MOISTURE,
            PieceField.METER,
            PieceField.PLACE,
            PieceField.LOT,
            PieceField.LOT_READY_ON,
            PieceField.COST);

    private final Rack rack;
    private final Pieces pieces;
    private final SpeciesCatalog woods;
    private final Shop shop;

    PieceFormController(Rack rack, Pieces pieces, SpeciesCatalog woods, Shop shop) {
        this.rack = rack;
        this.pieces = pieces;
        this.woods = woods;
        this.shop = shop;
    }

    @GetMapping("/rack/new")
    ModelAndView askForNew(@RequestParam(name = "like", defaultValue = "") String like) {
        PieceCells cells = new PieceCells();
        if (!like.isBlank()) {
            PieceCells other = PieceWords.cells(RackController.find(rack, like));
            ALIKE.forEach(f -> cells.put(f, other.get(f)));
        }
        return page(null, cells, List.of(), HttpStatus.OK);
    }

    @PostMapping("/rack/new")
    ModelAndView add(
            @RequestParam Map<String, String> form,
            @RequestParam(name = "then", defaultValue = "") String then,
            RedirectAttributes after) {
        PieceCells cells = PieceCells.of(form::get);
        Piece piece;
        try {
            piece = pieces.add(cells, LengthUnit.MM);
        } catch (WrongPieceException e) {
            return page(null, cells, onForm(e), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        boolean again = then.equals("again");
        after.addFlashAttribute(
                "notice",
                "Piece " + piece.code() + " is on the rack."
                        + (form.getOrDefault("code", "").isBlank() ? " Write its code on the wood." : "")
                        + (again ? " Here is the next one like it." : ""));
        if (again) {
            after.addAttribute("like", piece.code());
            return new ModelAndView("redirect:/rack/new");
        }
        after.addAttribute("code", piece.code());
        return new ModelAndView("redirect:/rack/{code}");
    }

    @GetMapping("/rack/{code}/edit")
    ModelAndView askForChange(@PathVariable String code) {
        Piece piece = RackController.find(rack, code);
        return page(piece, PieceWords.cells(piece), List.of(), HttpStatus.OK);
    }

    @PostMapping("/rack/{code}/edit")
    ModelAndView change(@PathVariable String code, @RequestParam Map<String, String> form, RedirectAttributes after) {
        Piece seen = RackController.find(rack, code);
        PieceCells cells = PieceCells.of(form::get).put(PieceField.CODE, seen.code());
        if (!PieceTag.of(seen).equals(form.getOrDefault("seen", ""))) {
            return page(seen, cells, List.of(changedSince(seen)), HttpStatus.CONFLICT);
        }
        try {
            Piece now = pieces.change(seen, cells, LengthUnit.MM);
            after.addFlashAttribute(
                    "notice", now.version() == seen.version() ? "Nothing was changed." : "The changes are saved.");
        } catch (WrongPieceException e) {
            return page(seen, cells, onForm(e), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (PieceChangedSinceException e) {
            Piece now = RackController.find(rack, code);
            return page(now, cells, List.of(changedSince(now)), HttpStatus.CONFLICT);
        } catch (ConflictException e) {
            return page(
                    seen,
                    cells,
                    List.of(new FieldError("/", "This edit", "", "is not possible now. " + e.getMessage())),
                    HttpStatus.CONFLICT);
        }
        after.addAttribute("code", seen.code());
        return new ModelAndView("redirect:/rack/{code}");
    }

    private static FieldError changedSince(Piece piece) {
        return new FieldError(
                "/",
                "Piece " + piece.code(),
                "",
                "was changed since you opened it. Your text is kept below; look at the piece in another window, and save"
                        + " again to put your text in its place");
    }

    private static List<FieldError> onForm(WrongPieceException e) {
        return e.errors().stream().map(CellError::onForm).toList();
    }

    private ModelAndView page(@Nullable Piece piece, PieceCells cells, List<FieldError> errors, HttpStatus status) {
        String unit = cells.has(PieceField.UNIT)
                ? cells.get(PieceField.UNIT)
                : shop.settings().unit().symbol();
        boolean isMore = piece != null
                || errors.stream().anyMatch(e -> !FIRST.contains(e.field()))
                || Stream.of(PieceField.values())
                        .anyMatch(f -> f != PieceField.UNIT && !FIRST.contains(f.column()) && cells.has(f));
        ModelAndView page = new ModelAndView("rack/form");
        page.setStatus(status);
        page.addObject("code", piece == null ? null : piece.code());
        page.addObject("seen", piece == null ? "" : PieceTag.of(piece));
        page.addObject("cells", cells);
        page.addObject("unitShown", unit);
        page.addObject("currency", shop.settings().currency());
        page.addObject(
                "woods",
                new WoodLabels(woods.all())
                        .choices(cells.has(PieceField.LAMINATION) ? "A lamination, see below" : "Choose a wood"));
        page.addObject("grains", GRAINS);
        page.addObject("meters", METERS);
        page.addObject("isMore", isMore);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }
}
