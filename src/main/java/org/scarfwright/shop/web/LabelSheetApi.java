package org.scarfwright.shop.web;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.net.URI;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.LabelSheet;
import org.scarfwright.shop.LabelSheets;
import org.scarfwright.shop.LabelSheets.Versioned;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.EditVersion;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** The sheets of labels over the API. */
@RestController
@RequestMapping("/api/shop/label-sheets")
class LabelSheetApi {
    private final LabelSheets sheets;

    LabelSheetApi(LabelSheets sheets) {
        this.sheets = sheets;
    }

    /** A label sheet on the wire. */
    @Schema(
            name = "LabelSheet",
            description = "In input a length may also be text as people write it, such as \"2 5/8 in\". A single label"
                    + " needs no grid: what is said of one is passed over.")
    record SheetView(
            @Schema(maxLength = 20) String code,
            @Schema(maxLength = 80) String name,

            @Schema(allowableValues = {"A4", "Letter", "single"})
            String paper,

            @Schema(minimum = "1", maximum = "20") int across,
            @Schema(minimum = "1", maximum = "40") int down,
            @Schema(minimum = "0", maximum = "150") BigDecimal leftMm,
            @Schema(minimum = "0", maximum = "200") BigDecimal topMm,

            @Schema(description = "May be left out in a single column", minimum = "0", maximum = "220")
            BigDecimal pitchAcrossMm,

            @Schema(description = "May be left out in a single row", minimum = "0", maximum = "300")
            BigDecimal pitchDownMm,

            @Schema(minimum = "24", maximum = "300") BigDecimal widthMm,
            @Schema(minimum = "17", maximum = "300") BigDecimal heightMm) {
        static SheetView of(LabelSheet s) {
            LabelSheet.Grid grid = s.grid();
            return new SheetView(
                    s.code(),
                    s.name(),
                    s.paper().word(),
                    grid.across(),
                    grid.down(),
                    grid.left().toMm(),
                    grid.top().toMm(),
                    grid.pitchAcross().toMm(),
                    grid.pitchDown().toMm(),
                    s.width().toMm(),
                    s.height().toMm());
        }
    }

    @GetMapping
    List<SheetView> list() {
        return sheets.all().stream().map(s -> SheetView.of(s.sheet())).toList();
    }

    @PostMapping
    ResponseEntity<SheetView> add(
            @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SheetView.class)))
                    @RequestBody
                    JsonNode body) {
        LabelSheet sheet = form(body).read(Entries.ofApi());
        if (!sheets.add(sheet)) {
            throw new ConflictException(
                    "There is another label sheet “" + sheet.code() + "”; choose a code of its own.");
        }
        return ResponseEntity.created(URI.create("/api/shop/label-sheets/" + sheet.code()))
                .eTag(EditVersion.etag(0))
                .body(SheetView.of(sheet));
    }

    @GetMapping("/{code}")
    ResponseEntity<SheetView> one(@PathVariable String code) {
        return answer(find(code));
    }

    @PutMapping("/{code}")
    ResponseEntity<SheetView> change(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SheetView.class)))
                    @RequestBody
                    JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        find(code);
        Entries entries = Entries.ofApi();
        LabelSheetForm form = form(body);
        LabelSheet wanted = form.read(entries);
        if (!wanted.code().equals(code)) {
            entries.refuse(form.codeEntry(), "“" + wanted.code() + "” is not the code in the address, " + code);
            entries.throwIfRefused();
        }
        if (!sheets.change(seen, wanted)) {
            throw EditConditionException.stale();
        }
        return answer(find(code));
    }

    @DeleteMapping("/{code}")
    ResponseEntity<Void> remove(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        long seen = EditVersion.seen(ifMatch);
        find(code);
        if (!sheets.remove(seen, code)) {
            throw EditConditionException.stale();
        }
        return ResponseEntity.noContent().build();
    }

    private static LabelSheetForm form(JsonNode body) {
        return LabelSheetForm.of(JsonTexts.read(body, LabelSheetForm.JSON_KEYS, LabelSheetForm.OPTIONAL_KEYS));
    }

    private Versioned find(String code) {
        return sheets.find(code)
                .orElseThrow(() -> new NotFoundException("There is no label sheet “" + code + "” in the shop."));
    }

    private static ResponseEntity<SheetView> answer(Versioned now) {
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(SheetView.of(now.sheet()));
    }
}
