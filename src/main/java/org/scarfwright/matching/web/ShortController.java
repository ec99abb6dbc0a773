package org.scarfwright.matching.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.RunsShort;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.CsvSheet;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;

/** What runs short: how many more necks of a design the rack can give. */
@Controller
@Tag(name = "Matching", description = "Which wood becomes which neck")
class ShortController {
    private final RunsShort runsShort;

    ShortController(RunsShort runsShort) {
        this.runsShort = runsShort;
    }

    /** How many more. */
    @Schema(name = "RunsShort")
    record ShortJson(
            String design,

            @Schema(description = "Necks that can be made; at most " + RunsShort.MOST + " are asked for")
            int necks,

            @Schema(description = "False when the search stopped before it knew that there are no more")
            boolean proved,

            int freePieces,
            List<String> pieces) {}

    @GetMapping("/short")
    ModelAndView show(@RequestParam(name = "design", defaultValue = "") String design) {
        ModelAndView page = new ModelAndView("matching/short");
        page.addObject("designs", runsShort.designs());
        page.addObject("most", RunsShort.MOST);
        page.addObject("asked", design);
        page.addObject("answer", null);
        page.addObject("wrong", null);
        if (!design.isBlank()) {
            try {
                page.addObject("answer", runsShort.more(design));
            } catch (NotFoundException e) {
                wrong(page, HttpStatus.NOT_FOUND, e.getMessage());
            } catch (ConflictException e) {
                wrong(page, HttpStatus.CONFLICT, e.getMessage());
            }
        }
        return page;
    }

    private static void wrong(ModelAndView page, HttpStatus status, @Nullable String sentence) {
        page.setStatus(status);
        page.addObject("wrong", sentence);
    }

    @GetMapping("/short.csv")
    ResponseEntity<String> csv(@RequestParam(name = "design", defaultValue = "") String design) {
        RunsShort.Answer a = runsShort.more(design);
        CsvSheet sheet = new CsvSheet("design", "necks", "proved", "free_pieces", "pieces")
                .row(a.design(), a.necks(), a.proved() ? "yes" : "no", a.free(), String.join(" ", a.pieces()));
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
                .header("Content-Disposition", "attachment; filename=\"runs-short.csv\"")
                .body(sheet.text());
    }

    @GetMapping("/api/short")
    @ResponseBody
    @Operation(
            summary = "How many more necks of a design the rack can give",
            description = "Matches them with the free pieces as if nothing else were made; takes up to "
                    + RunsShort.SECONDS + " seconds and saves nothing.")
    ShortJson more(@RequestParam(name = "design") String design) {
        RunsShort.Answer a = runsShort.more(design);
        return new ShortJson(a.design(), a.necks(), a.proved(), a.free(), a.pieces());
    }
}
