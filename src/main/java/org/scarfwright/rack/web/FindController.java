package org.scarfwright.rack.web;

import java.util.List;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The short addresses on labels, and the field that finds a piece by a code as people type or say it. */
@Controller
class FindController {
    private static final int LONGEST = 200;

    private final Rack rack;
    private final Pieces pieces;
    private final SpeciesCatalog woods;

    FindController(Rack rack, Pieces pieces, SpeciesCatalog woods) {
        this.rack = rack;
        this.pieces = pieces;
        this.woods = woods;
    }

    /** A piece that may be meant. */
    record Candidate(String code, String wood, String size, String place) {}

    @GetMapping("/p/{code}")
    ModelAndView scanned(@PathVariable String code) {
        return answer(code);
    }

    @GetMapping("/p")
    ModelAndView typed(@RequestParam(name = "code", defaultValue = "") String said) {
        return said.isBlank() ? page(said, List.of(), HttpStatus.OK) : answer(said);
    }

    private ModelAndView answer(String said) {
        List<String> codes = said.length() > LONGEST ? List.of() : pieces.meant(said);
        if (codes.size() == 1) {
            return new ModelAndView("redirect:/rack/" + codes.get(0));
        }
        return page(said, codes, codes.isEmpty() ? HttpStatus.NOT_FOUND : HttpStatus.OK);
    }

    private ModelAndView page(String said, List<String> codes, HttpStatus status) {
        WoodLabels labels = new WoodLabels(woods.all());
        ModelAndView page = new ModelAndView("rack/find");
        page.setStatus(status);
        page.addObject("said", said.length() > LONGEST ? "" : said.strip());
        page.addObject("shown", RackApi.shown(said.strip()));
        page.addObject(
                "candidates",
                rack.findAll(codes).stream().map(p -> candidate(p, labels)).toList());
        page.addObject("unknown", status == HttpStatus.NOT_FOUND);
        return page;
    }

    private static Candidate candidate(Piece piece, WoodLabels labels) {
        return new Candidate(
                piece.code(),
                labels.of(piece.wood()),
                PieceWords.size(piece),
                piece.place() == null ? "" : piece.place());
    }

    /** @throws InvalidInputException when nothing was asked, or more than a code can be */
    static String asked(String said) {
        if (said.isBlank() || said.length() > LONGEST) {
            throw new InvalidInputException(new FieldError(
                    "/code",
                    "Code",
                    said,
                    (said.isBlank() ? "is empty" : "is longer than " + LONGEST + " characters")
                            + "; give a piece's code, for example M-14"));
        }
        return said;
    }
}
