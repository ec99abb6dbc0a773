package org.scarfwright.necks.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.book.Checked;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.necks.book.DesignBook;
import org.scarfwright.necks.book.DesignField;
import org.scarfwright.necks.book.DesignText;
import org.scarfwright.necks.book.Entry;
import org.scarfwright.necks.book.NeckFiles;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.EditVersion;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.UriComponentsBuilder;
import tools.jackson.databind.JsonNode;

/** Neck designs for programs. */
@RestController
@RequestMapping("/api/designs")
@Tag(name = "Designs", description = "Neck designs")
class DesignApi {
    private static final DraftJson JSON =
            new DraftJson(List.of(DesignField.values()), Set.of("typed", "notices", "version"));

    private final DesignBook book;
    private final Designs designs;

    DesignApi(DesignBook book, Designs designs) {
        this.book = book;
        this.designs = designs;
    }

    @GetMapping
    @Operation(summary = "All designs, in order of their codes")
    List<DesignJson> all() {
        return designs.all().stream().map(DesignJson::of).toList();
    }

    @GetMapping("/{code}")
    @Operation(summary = "One design, with its version as ETag")
    ResponseEntity<DesignJson> one(@PathVariable String code) {
        return answer(HttpStatus.OK, book.get(code));
    }

    @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Enter a design, or an array of them (all or none)",
            description = "Lengths are millimetres as numbers, or text as people write it. The same design again "
                    + "changes nothing; the same code with other figures is refused.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = DesignJson.class))))
    ResponseEntity<?> add(
            @RequestBody JsonNode body, @RequestParam(name = "preview", defaultValue = "false") boolean preview) {
        List<Entry> entries = JSON.entries(body);
        if (body.isArray() || preview) {
            return answer(preview, entries);
        }
        Checked<NeckDesign> done = book.add(entries).get(0);
        return answer(
                done.fate() == Fate.NEW ? HttpStatus.CREATED : HttpStatus.OK,
                book.get(done.value().orElseThrow().code()));
    }

    @PostMapping(consumes = "text/csv")
    @Operation(
            summary = "Read a CSV file of designs (all or none)",
            description = "With preview=true nothing is saved and the answer says what would become of each row.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content =
                                    @Content(mediaType = "text/csv", schema = @Schema(implementation = String.class))))
    ResponseEntity<ImportAnswer> addFile(
            @RequestBody(required = false) byte @Nullable [] body,
            @RequestParam(name = "preview", defaultValue = "false") boolean preview) {
        byte[] content = body == null ? new byte[0] : body;
        return answer(preview, NeckFiles.designs(CsvTable.read(content, NeckFiles.designColumns(), NeckFiles.LIMITS)));
    }

    @PutMapping(path = "/{code}", consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Change a design",
            description =
                    "Needs If-Match with the ETag that was read. A number that is the same length as before keeps "
                            + "the text it was entered as.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = DesignJson.class))))
    ResponseEntity<DesignJson> change(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        NeckDesign there = book.get(code);
        long seen = EditVersion.seen(ifMatch);
        Entry entry = JSON.single(body);
        for (DesignField field : DesignField.values()) {
            JsonNode value = body.get(field.json());
            if (field.isLength() && value != null && value.isNumber()) {
                TypedLength was = DesignText.length(there, field);
                if (was.length().toMm().compareTo(value.decimalValue()) == 0) {
                    entry = entry.with(field, was.typed());
                }
            }
        }
        return answer(HttpStatus.OK, book.change(code, seen, entry));
    }

    private ResponseEntity<ImportAnswer> answer(boolean preview, List<Entry> entries) {
        List<Checked<NeckDesign>> checked = preview ? book.check(entries) : book.add(entries);
        ImportAnswer answer = ImportAnswer.of(preview, checked, NeckDesign::code);
        return ResponseEntity.status(!preview && answer.added() > 0 ? HttpStatus.CREATED : HttpStatus.OK)
                .body(answer);
    }

    private static ResponseEntity<DesignJson> answer(HttpStatus status, NeckDesign design) {
        ResponseEntity.BodyBuilder builder = ResponseEntity.status(status).eTag(EditVersion.etag(design.version()));
        if (status == HttpStatus.CREATED) {
            builder.location(
                    UriComponentsBuilder.fromPath("/api/designs/{code}").build(design.code()));
        }
        return builder.body(DesignJson.of(design));
    }
}
