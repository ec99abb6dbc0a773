package org.scarfwright.week.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.FilterForm;
import org.scarfwright.shop.ShopAddress;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.paper.Labels;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** Labels as a PDF. */
@RestController
@Tag(name = "Labels")
class LabelApi {
    private final LabelDesk desk;
    private final ShopAddress address;

    LabelApi(LabelDesk desk, ShopAddress address) {
        this.desk = desk;
        this.address = address;
    }

    @GetMapping("/api/labels")
    @Operation(
            summary = "Labels of pieces, as a PDF",
            description =
                    "codes: pieces, with commas or spaces between them, at most 1000. Without codes, those pieces on the rack"
                            + " that the other values choose, as in the list of pieces; pieces that are used up or scrapped only"
                            + " when state asks for them. sheet: code of a label sheet; the usual one when left out. first: which"
                            + " label of a begun sheet to begin with, from 1. measured: what the printer makes of a bar of 100 mm,"
                            + " 95 to 105; everything is drawn larger or smaller about the middle of the page to make up for it.",
            responses =
                    @ApiResponse(
                            responseCode = "200",
                            content =
                                    @Content(
                                            mediaType = MediaType.APPLICATION_PDF_VALUE,
                                            schema = @Schema(type = "string", format = "binary"))))
    ResponseEntity<byte[]> labels(
            @Parameter(hidden = true) @RequestParam Map<String, String> asked,
            @RequestParam(required = false) @Nullable String codes,
            @RequestParam(required = false) @Nullable String sheet,
            @RequestParam(required = false) @Nullable String first,
            @RequestParam(required = false) @Nullable String measured,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable String wood,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String place,
            @RequestParam(required = false) @Nullable String minLengthMm,
            @RequestParam(required = false) @Nullable String minWidthMm,
            @RequestParam(required = false) @Nullable String minThicknessMm,
            @RequestParam(required = false) @Nullable String can,
            @RequestParam(required = false) @Nullable String sort) {
        String base = address.orElse(
                ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString());
        LabelDesk.Ready ready = desk.read(new LabelDesk.Wish(new FilterForm(asked, LengthUnit.MM, "Mm"), base));
        Labels labels = ready.labels();
        if (labels == null) {
            throw new InvalidInputException(ready.errors());
        }
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename("labels.pdf")
                                .build()
                                .toString())
                .body(labels.pdf());
    }
}
