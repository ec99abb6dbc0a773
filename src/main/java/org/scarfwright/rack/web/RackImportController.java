package org.scarfwright.rack.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.ImportResult;
import org.scarfwright.rack.PieceFacts;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.RackImport;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A rack file: chosen or pasted, looked at, mended in place, saved. */
@Controller
class RackImportController {
    private static final int ROWS_SHOWN = 200;

    /** A larger file is mended where it is and chosen again; a page that holds it would be too slow to type in. */
    private static final int MOST_ECHOED = 1_000_000;

    private final RackImport rackImport;
    private final SpeciesCatalog woods;

    RackImportController(RackImport rackImport, SpeciesCatalog woods) {
        this.rackImport = rackImport;
        this.woods = woods;
    }

    /** A row of the preview. */
    record Row(int number, String fate, String code, String wood, String size, String remark) {}

    @GetMapping("/rack/import")
    ModelAndView ask() {
        return page("", null, List.of(), HttpStatus.OK);
    }

    @PostMapping("/rack/import")
    ModelAndView read(
            @RequestParam(name = "file", required = false) @Nullable MultipartFile file,
            @RequestParam(name = "text", defaultValue = "") String text,
            @RequestParam(name = "then", defaultValue = "look") String then,
            RedirectAttributes after)
            throws IOException {
        byte[] uploaded = file == null ? new byte[0] : file.getBytes();
        byte[] content = uploaded.length > 0 ? uploaded : text.getBytes(StandardCharsets.UTF_8);
        String shown = uploaded.length > 0 ? echo(content) : text;
        boolean save = then.equals("save");
        ImportResult result;
        try {
            result = save ? rackImport.save(content) : rackImport.preview(content);
        } catch (InvalidInputException e) {
            return page(shown, null, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        if (!result.errors().isEmpty()) {
            HttpStatus status = save ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.OK;
            return page(shown, result, CsvTable.first(result.errors()), status);
        }
        if (!save) {
            return page(shown, result, List.of(), HttpStatus.OK);
        }
        after.addFlashAttribute("notice", notice(result));
        return new ModelAndView("redirect:/rack");
    }

    private static String notice(ImportResult result) {
        String added = result.added() == 1 ? "1 piece is" : result.added() + " pieces are";
        String there = result.unchanged() == 0
                ? ""
                : " " + result.unchanged() + (result.unchanged() == 1 ? " was" : " were") + " there already.";
        return added + " new on the rack." + there;
    }

    /** The file's text for the text area, or nothing when it is too large or no text. */
    private static String echo(byte[] content) {
        if (content.length > MOST_ECHOED) {
            return "";
        }
        String text = new String(content, StandardCharsets.UTF_8);
        return text.contains("\0") ? "" : text.replace("\ufeff", "");
    }

    private ModelAndView page(String text, @Nullable ImportResult result, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("rack/import");
        page.setStatus(status);
        page.addObject("content", text);
        page.addObject("result", result);
        page.addObject("rows", result == null ? List.of() : rows(result));
        page.addObject("isCut", result != null && result.rows().size() > ROWS_SHOWN);
        page.addObject("errorList", errors);
        page.addObject("mostRows", RackImport.MOST_ROWS);
        return page;
    }

    private List<Row> rows(ImportResult result) {
        WoodLabels labels = new WoodLabels(woods.all());
        return result.rows().stream()
                .limit(ROWS_SHOWN)
                .map(r -> {
                    PieceFacts facts = r.facts();
                    return new Row(
                            r.number(),
                            PieceJson.word(r.outcome()),
                            r.code() == null ? "" : r.code(),
                            facts == null ? "" : labels.of(facts.wood()),
                            facts == null ? "" : PieceWords.size(facts),
                            r.remark());
                })
                .toList();
    }
}
