package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.FilterForm;
import org.scarfwright.rack.ImportResult;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceChangedSinceException;
import org.scarfwright.rack.PieceList;
import org.scarfwright.rack.PieceReadiness;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceUses;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.scarfwright.rack.ReadingHistory;
import org.scarfwright.rack.WoodNames;
import org.scarfwright.rack.WrongPieceException;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
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

/** The rack for programs. */
@RestController
@RequestMapping("/api/rack")
@Tag(name = "Rack", description = "Pieces of wood")
class RackApi {
    private static final int USUAL_SIZE = 50;

    private final Rack rack;
    private final Pieces pieces;
    private final RackImport rackImport;
    private final PieceUses uses;
    private final PieceReadiness readiness;
    private final SpeciesCatalog woods;
    private final Shop shop;

    RackApi(
            Rack rack,
            Pieces pieces,
            RackImport rackImport,
            PieceUses uses,
            PieceReadiness readiness,
            SpeciesCatalog woods,
            Shop shop) {
        this.rack = rack;
        this.pieces = pieces;
        this.uses = uses;
        this.readiness = readiness;
        this.shop = shop;
        this.rackImport = rackImport;
        this.woods = woods;
    }

    /** One page of pieces. */
    @Schema(name = "PieceList")
    record ListJson(List<PieceJson> pieces, int page, int pages, long total) {}

    @GetMapping("/pieces")
    @Operation(
            summary = "Pieces, one page at a time",
            description =
                    "q: words found in code, note, place, lot or wood. wood: id or name. state: on_rack, reserved,"
                            + " at_bench, used_up, scrapped, sold. minLengthMm, minWidthMm, minThicknessMm: at least, as measured."
                            + " can: neck or head, what some design on file could have from it by the rules of matching,"
                            + " moisture, lots and reservations aside."
                            + " sort: code, longest, widest, thickest, newest, oldest. page from 1; size 1 to 500, usually 50.")
    ListJson list(
            @Parameter(hidden = true) @RequestParam Map<String, String> asked,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable String wood,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String place,
            @RequestParam(required = false) @Nullable String minLengthMm,
            @RequestParam(required = false) @Nullable String minWidthMm,
            @RequestParam(required = false) @Nullable String minThicknessMm,
            @Parameter(schema = @Schema(allowableValues = {"neck", "head"})) @RequestParam(required = false) @Nullable
                    String can,
            @RequestParam(required = false) @Nullable String sort,
            @RequestParam(required = false) @Nullable String page,
            @RequestParam(required = false) @Nullable String size) {
        FilterForm.Asked read = new FilterForm(asked, LengthUnit.MM, "Mm")
                .read(new WoodNames(woods.all()), USUAL_SIZE, Pieces.LARGEST_PAGE);
        if (!read.errors().isEmpty()) {
            throw new InvalidInputException(read.errors());
        }
        PieceList found = pieces.list(read.filter(), read.sort(), read.page(), read.size());
        return new ListJson(
                found.pieces().stream().map(PieceJson::of).toList(), found.page(), found.pages(), found.total());
    }

    /** Codes of pieces that may be meant. */
    @Schema(name = "FoundPieces")
    record FoundJson(List<String> codes) {}

    @GetMapping("/find")
    @Operation(
            summary = "Which piece is meant by a code somebody typed, scanned or heard",
            description =
                    "Case, spaces and hyphens do not matter, signs that look alike (O and 0, I and 1, S and 5 and such)"
                            + " count as one, digits and letters may be spelled out, and the whole address on a label will do. One"
                            + " code when it is plain which, several when more are alike, none when no piece is called so.")
    FoundJson meant(@RequestParam(name = "code", defaultValue = "") String said) {
        return new FoundJson(pieces.meant(FindController.asked(said)));
    }

    @GetMapping("/pieces/{code}")
    @Operation(summary = "One piece, with its version as ETag")
    ResponseEntity<PieceJson> one(@PathVariable String code) {
        return answer(HttpStatus.OK, find(code));
    }

    @PostMapping(path = "/pieces", consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Add a piece",
            description = "Needs a wood or a lamination, and length, width and thickness.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = PieceJson.class))))
    ResponseEntity<PieceJson> add(@RequestBody JsonNode body) {
        PieceInput input = PieceInput.read(body);
        input.requireReadable(() -> pieces.faults(input.cells(), LengthUnit.MM, null));
        try {
            return answer(HttpStatus.CREATED, pieces.add(input.cells(), LengthUnit.MM));
        } catch (WrongPieceException e) {
            throw new InvalidInputException(input.errors(e.errors()));
        }
    }

    @PutMapping(path = "/pieces/{code}", consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Change a piece",
            description = "Replaces all that is said about it. Needs If-Match with the ETag that was read. Readings of"
                    + " moisture and warp are only ever added: one that is left out stays.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = PieceJson.class))))
    ResponseEntity<PieceJson> change(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        Piece seen = find(code);
        PieceTag.check(ifMatch, seen);
        PieceInput input = PieceInput.read(body);
        input.requireReadable(() -> pieces.faults(input.cells(), LengthUnit.MM, seen));
        try {
            return answer(HttpStatus.OK, pieces.change(seen, input.cells(), LengthUnit.MM));
        } catch (WrongPieceException e) {
            throw new InvalidInputException(input.errors(e.errors()));
        } catch (PieceChangedSinceException e) {
            throw EditConditionException.stale();
        }
    }

    @PostMapping(path = "/import", consumes = "text/csv")
    @Operation(
            summary = "Import a rack file (all or none)",
            description =
                    "CSV in UTF-8 with the columns code, wood, length, width, thickness, unit, moisture, bow, crook,"
                            + " cup, twist, lamination, defects, place, lot, cost, note and more; wood, length, width and"
                            + " thickness are needed. With preview=true nothing is saved and the answer is 200 with what each"
                            + " row would become and, in errors, every bad cell. Without it a bad cell is a 422 with the same"
                            + " errors and rows, and nothing is saved. A file that is no table of pieces is a 422 either"
                            + " way.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content =
                                    @Content(mediaType = "text/csv", schema = @Schema(implementation = String.class))))
    ResponseEntity<?> importFile(
            @RequestParam(name = "preview", defaultValue = "false") boolean preview, HttpServletRequest request)
            throws IOException {
        Charset charset = charset(request.getContentType());
        if (!charset.equals(StandardCharsets.UTF_8)) {
            throw new InvalidInputException(new FieldError(
                    "/file", "File", charset.name(), "is sent as " + charset.name() + "; send it as UTF-8"));
        }
        byte[] file;
        try (InputStream in = request.getInputStream()) {
            file = in.readNBytes(RackImport.MOST_BYTES + 1);
        }
        ImportResult result = preview ? rackImport.preview(file) : rackImport.save(file);
        ImportJson answer = ImportJson.of(result);
        if (!preview && !result.errors().isEmpty()) {
            ProblemDetail problem = ProblemDetail.forStatusAndDetail(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    (result.errors().size() == 1
                                    ? "One cell is"
                                    : result.errors().size() + " cells are") + " not right; nothing was saved.");
            problem.setTitle("Not right yet");
            problem.setProperty("errors", answer.errors());
            problem.setProperty("added", answer.added());
            problem.setProperty("unchanged", answer.unchanged());
            problem.setProperty("refused", answer.refused());
            problem.setProperty("rows", answer.rows());
            return ResponseEntity.unprocessableContent()
                    .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                    .body(problem);
        }
        return ResponseEntity.status(!preview && result.added() > 0 ? HttpStatus.CREATED : HttpStatus.OK)
                .body(answer);
    }

    /** As the header names it; the request itself claims UTF-8 whatever was sent. */
    private static Charset charset(@Nullable String contentType) {
        Charset named = contentType == null
                ? null
                : MediaType.parseMediaType(contentType).getCharset();
        return named == null ? StandardCharsets.UTF_8 : named;
    }

    @GetMapping("/pieces/{code}/usable")
    @Operation(
            summary = "What a piece can still give",
            description =
                    "thicknessMm: finds the longest neck and head of this finished thickness. widthMm: the piece is"
                            + " ripped to this before it is flattened; its whole width when left out. Both more than 0 and at most what"
                            + " the piece has. Rests on bow and crook as one circular arc, cup as one arc across and even twist, unless"
                            + " the middle half was read too; then the worse counts.")
    UsableJson usable(
            @PathVariable String code,
            @Parameter(hidden = true) @RequestParam Map<String, String> asked,
            @RequestParam(required = false) @Nullable String thicknessMm,
            @RequestParam(required = false) @Nullable String widthMm) {
        Piece piece = find(code);
        UsableQuery query = UsableQuery.of(asked, "Mm", LengthUnit.MM, piece);
        if (!query.errors().isEmpty()) {
            throw new InvalidInputException(query.errors());
        }
        return UsableJson.of(
                piece,
                query,
                uses.designs(piece),
                new UsableJson.Facts(shop.settings(), new WoodLabels(woods.all()), readiness.of(piece)));
    }

    @GetMapping("/pieces/{code}/uses")
    @Operation(
            summary = "Which necks of the coming weeks a free piece could serve",
            description =
                    "This ISO week and the three after it, necks no accepted plan has yet. Empty for a piece that is not"
                            + " free. What does not fit says the first reason in the way that comes closest.")
    List<UseJson> uses(@PathVariable String code) {
        Piece piece = find(code);
        return piece.state() == PieceState.ON_RACK
                ? uses.coming(piece).stream().map(UseJson::of).toList()
                : List.of();
    }

    @GetMapping("/pieces/{code}/readings")
    @Operation(
            summary = "What was measured on a piece, the oldest first",
            description =
                    "Readings of warp and moisture of one day stand together, with the change since the reading before.")
    List<ReadingJson> readings(@PathVariable String code) {
        Piece piece = find(code);
        return ReadingHistory.of(pieces.warpReadings(piece.code()), pieces.moistureReadings(piece.code())).stream()
                .map(ReadingJson::of)
                .toList();
    }

    @PostMapping(path = "/pieces/{code}/readings", consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Measure a piece again",
            description =
                    "Adds readings and changes nothing else; earlier ones stay. Needs If-Match with the ETag of the"
                            + " piece. Of bow, crook, cup and twist what is left out keeps what was read last. Twist is the lift of the"
                            + " fourth corner, or what winding sticks show: stickGapMm over stickLengthMm, stickDistanceMm apart"
                            + " (the piece's length when left out). A reading older than the newest is kept and does not count. The"
                            + " answer is the piece.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = MeasuringJson.class))))
    ResponseEntity<PieceJson> measure(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        Piece seen = find(code);
        PieceTag.check(ifMatch, seen);
        PieceInput input = PieceInput.read(body, MeasuringJson.FIELDS);
        input.requireReadable(List::of);
        try {
            Piece now = pieces.measure(seen, input.cells(), LengthUnit.MM);
            return answer(now.version() == seen.version() ? HttpStatus.OK : HttpStatus.CREATED, now);
        } catch (WrongPieceException e) {
            throw new InvalidInputException(input.errors(e.errors()));
        } catch (PieceChangedSinceException e) {
            throw EditConditionException.stale();
        }
    }

    private Piece find(String code) {
        return rack.find(code).orElseThrow(() -> new NotFoundException("There is no piece “" + shown(code) + "”."));
    }

    static String shown(String code) {
        return code.length() > 40 ? code.substring(0, 40) + "…" : code;
    }

    private static ResponseEntity<PieceJson> answer(HttpStatus status, Piece piece) {
        ResponseEntity.BodyBuilder builder = ResponseEntity.status(status).eTag(PieceTag.of(piece));
        if (status == HttpStatus.CREATED) {
            builder.location(
                    UriComponentsBuilder.fromPath("/api/rack/pieces/{code}").build(piece.code()));
        }
        return builder.body(PieceJson.of(piece));
    }
}
