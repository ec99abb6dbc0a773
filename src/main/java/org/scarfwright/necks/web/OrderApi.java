package org.scarfwright.necks.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.book.Checked;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.necks.book.Entry;
import org.scarfwright.necks.book.NeckFiles;
import org.scarfwright.necks.book.OrderBook;
import org.scarfwright.necks.book.OrderEntry;
import org.scarfwright.necks.book.OrderField;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.EditVersion;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
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

/** Orders for programs. */
@RestController
@RequestMapping("/api/orders")
@Tag(name = "Orders", description = "Orders for necks")
class OrderApi {
    private static final DraftJson JSON =
            new DraftJson(List.of(OrderField.values()), Set.of("state", "notices", "version"));

    private final OrderBook book;

    OrderApi(OrderBook book) {
        this.book = book;
    }

    @GetMapping
    @Operation(
            summary = "Orders of one week, or all of them",
            description =
                    "By week, priority (highest first), due day and code. Cancelled ones are among them; see state.")
    List<OrderJson> all(@RequestParam(name = "week", required = false) @Nullable String week) {
        return book.entries(Optional.ofNullable(week).map(OrderApi::week)).stream()
                .map(OrderJson::of)
                .toList();
    }

    private static IsoWeek week(String text) {
        try {
            return IsoWeek.parse(text);
        } catch (MeasureFormatException e) {
            throw new InvalidInputException(
                    new FieldError("/week", OrderField.WEEK.label(), text, String.valueOf(e.getMessage())));
        }
    }

    @GetMapping("/{code}")
    @Operation(summary = "One order, with its version as ETag")
    ResponseEntity<OrderJson> one(@PathVariable String code) {
        return answer(HttpStatus.OK, book.get(code));
    }

    @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Enter an order, or an array of them (all or none)",
            description = "Without a code it gets one. Without a week it is for the week of its due day. The same code "
                    + "with the same figures changes nothing; with other figures it is refused.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = OrderJson.class))))
    ResponseEntity<?> add(
            @RequestBody JsonNode body, @RequestParam(name = "preview", defaultValue = "false") boolean preview) {
        List<Entry> entries = JSON.entries(body);
        if (body.isArray() || preview) {
            return answer(preview, entries);
        }
        Checked<NeckOrder> done = book.add(entries).get(0);
        return answer(
                done.fate() == Fate.NEW ? HttpStatus.CREATED : HttpStatus.OK,
                book.get(done.value().orElseThrow().code()));
    }

    @PostMapping(consumes = "text/csv")
    @Operation(
            summary = "Read a CSV file of orders (all or none)",
            description = "With preview=true nothing is saved and the answer says what would become of each row.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content =
                                    @Content(mediaType = "text/csv", schema = @Schema(implementation = String.class))))
    ResponseEntity<ImportAnswer> addFile(
            @RequestBody(required = false) byte @Nullable [] body,
            @RequestParam(name = "preview", defaultValue = "false") boolean preview) {
        byte[] content = body == null ? new byte[0] : body;
        return answer(preview, NeckFiles.orders(CsvTable.read(content, NeckFiles.orderColumns(), NeckFiles.LIMITS)));
    }

    @PutMapping(path = "/{code}", consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            summary = "Change an order",
            description = "Needs If-Match with the ETag that was read.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = OrderJson.class))))
    ResponseEntity<OrderJson> change(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        book.get(code);
        long seen = EditVersion.seen(ifMatch);
        return answer(HttpStatus.OK, book.change(code, seen, JSON.single(body)));
    }

    @PostMapping("/{code}/cancel")
    @Operation(summary = "Call an order off; it stays on file and is in no week's plan")
    ResponseEntity<OrderJson> cancel(@PathVariable String code) {
        return answer(HttpStatus.OK, book.cancel(code));
    }

    @PostMapping("/{code}/restore")
    @Operation(summary = "Take a cancelled order up again")
    ResponseEntity<OrderJson> restore(@PathVariable String code) {
        return answer(HttpStatus.OK, book.restore(code));
    }

    private ResponseEntity<ImportAnswer> answer(boolean preview, List<Entry> entries) {
        List<Checked<NeckOrder>> checked = preview ? book.check(entries) : book.add(entries);
        ImportAnswer answer = ImportAnswer.of(preview, checked, NeckOrder::code);
        return ResponseEntity.status(!preview && answer.added() > 0 ? HttpStatus.CREATED : HttpStatus.OK)
                .body(answer);
    }

    private static ResponseEntity<OrderJson> answer(HttpStatus status, OrderEntry entry) {
        ResponseEntity.BodyBuilder builder = ResponseEntity.status(status)
                .eTag(EditVersion.etag(entry.order().version()));
        if (status == HttpStatus.CREATED) {
            builder.location(UriComponentsBuilder.fromPath("/api/orders/{code}")
                    .build(entry.order().code()));
        }
        return builder.body(OrderJson.of(entry));
    }
}
