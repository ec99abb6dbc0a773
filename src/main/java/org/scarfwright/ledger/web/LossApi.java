package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Entry;
import org.scarfwright.ledger.Losses;
import org.scarfwright.ledger.Losses.Neck;
import org.scarfwright.ledger.NeckOrigins;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.UriComponentsBuilder;

/** Losses and origins over the API: what the pages can do. */
@RestController
@RequestMapping("/api/ledger")
@Tag(name = "Ledger", description = "What happened to every piece, append-only")
class LossApi {
    private final Losses losses;
    private final NeckOrigins origins;

    LossApi(Losses losses, NeckOrigins origins) {
        this.losses = losses;
        this.origins = origins;
    }

    /** A piece as it was seen. */
    @Schema(name = "SeenPiece")
    record SeenJson(@Nullable String code, @Nullable Long version) {}

    /** Whole pieces that go. */
    @Schema(name = "Removal")
    record RemovalJson(
            @Schema(description = "1 to 500 pieces with the versions that were read") @Nullable
            List<SeenJson> pieces,

            @Schema(allowableValues = {"scrapped", "sold"}) @Nullable
            String as,

            @Schema(maxLength = Doing.LONGEST_WHO) @Nullable String who,

            @Schema(maxLength = Doing.LONGEST_WHY) @Nullable String why) {}

    /** Parts that are lost. */
    @Schema(name = "WriteOff")
    record WriteOffJson(
            @Schema(description = "neck, head or both") @Nullable
            List<String> parts,

            @Schema(description = "What can still be used of them: at most one rest of each") @Nullable
            List<KeptJson> kept,

            @Schema(maxLength = Doing.LONGEST_WHO) @Nullable String who,

            @Schema(maxLength = Doing.LONGEST_WHY) @Nullable String why) {}

    /** What is kept of a part: a new piece on the rack. */
    @Schema(name = "KeptOfPart")
    record KeptJson(
            @Schema(allowableValues = {"neck", "head"}) @Nullable
            String part,

            @Schema(description = "In millimetres or as people write it", example = "320") @Nullable
            String length,

            @Nullable String width,
            @Nullable String thickness,

            @Schema(description = "Empty: that of the piece the part was cut from", maxLength = 60) @Nullable
            String place) {}

    /** Where the wood of a neck came from. */
    @Schema(name = "NeckOrigin")
    record OriginJson(
            long plan,
            String order,
            int neck,
            String design,
            @Nullable BigDecimal cost,
            List<PartJson> parts) {}

    /** One part of it. */
    @Schema(name = "PartOrigin")
    record PartJson(
            String part,
            boolean spoilt,
            BigDecimal volumeMm3,
            @Nullable BigDecimal cost,

            @Schema(description = "The piece it was cut from, the piece that one was cut from, and so on")
            List<String> pieces,

            @Nullable String lot,
            long entry) {}

    @PostMapping("/removals")
    @Operation(
            summary = "Scrap or sell whole pieces",
            description = "All of them or none, with a reason. A 409 names every piece that changed since.")
    ResponseEntity<EntryJson> remove(@RequestBody RemovalJson removal) {
        List<FieldError> errors = new ArrayList<>();
        List<Rack.PieceStamp> stamps = new ArrayList<>();
        List<SeenJson> pieces = removal.pieces() == null ? List.of() : removal.pieces();
        for (int i = 0; i < pieces.size(); i++) {
            SeenJson seen = pieces.get(i);
            if (seen.code() == null || seen.version() == null) {
                errors.add(new FieldError("/pieces/" + i, "Piece", "", "needs a code and the version that was read"));
            } else {
                stamps.add(new Rack.PieceStamp(seen.code(), seen.version()));
            }
        }
        String as = removal.as() == null ? "" : removal.as();
        if (!as.equals("scrapped") && !as.equals("sold")) {
            errors.add(new FieldError("/as", "As", as, "“" + as + "” is neither scrapped nor sold"));
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return created(losses.remove(
                stamps,
                as.equals("sold") ? PieceState.SOLD : PieceState.SCRAPPED,
                text(removal.who()),
                text(removal.why())));
    }

    @GetMapping("/necks/{plan}/{order}/{number}")
    @Operation(summary = "Where the wood of a neck came from, and its share of what that cost")
    OriginJson origin(@PathVariable long plan, @PathVariable String order, @PathVariable int number) {
        Neck neck = new Neck(plan, order, number);
        return origins.of(neck)
                .map(o -> new OriginJson(
                        plan,
                        order,
                        number,
                        o.design(),
                        o.cost() == null ? null : o.cost().toDecimal(),
                        o.parts().stream()
                                .map(p -> new PartJson(
                                        p.head() ? "head" : "neck",
                                        p.spoilt(),
                                        p.volume().toMm3(),
                                        p.cost() == null ? null : p.cost().toDecimal(),
                                        p.pieces(),
                                        p.lot(),
                                        p.entry()))
                                .toList()))
                .orElseThrow(() ->
                        new NotFoundException("No cut of " + neck.title() + " was recorded for plan " + plan + "."));
    }

    @PostMapping("/necks/{plan}/{order}/{number}/write-off")
    @Operation(
            summary = "Write parts of a neck off that were cut already",
            description = "A wrong cut that was seen late, a joint that failed. Needs a reason.")
    ResponseEntity<EntryJson> writeOff(
            @PathVariable long plan,
            @PathVariable String order,
            @PathVariable int number,
            @RequestBody WriteOffJson words) {
        Map<String, String> typed = new HashMap<>();
        for (String part : words.parts() == null ? List.<String>of() : words.parts()) {
            typed.put(part("/parts", part), "true");
        }
        for (KeptJson kept : words.kept() == null ? List.<KeptJson>of() : words.kept()) {
            String part = part("/kept", text(kept.part()));
            if (typed.put(part + "-length", text(kept.length())) != null) {
                throw new InvalidInputException(new FieldError(
                        "/kept", "Kept", part, "names the " + part + " twice; keep one rest of each part"));
            }
            typed.put(part + "-width", text(kept.width()));
            typed.put(part + "-thickness", text(kept.thickness()));
            typed.put(part + "-place", text(kept.place()));
        }
        return created(losses.writeOff(
                new Neck(plan, order, number),
                WriteOffForm.read(typed, LengthUnit.MM),
                text(words.who()),
                text(words.why())));
    }

    private static String part(String field, String part) {
        if (!part.equals("neck") && !part.equals("head")) {
            throw new InvalidInputException(
                    new FieldError(field, "Parts", part, "“" + part + "” is neither neck nor head"));
        }
        return part;
    }

    private static String text(@Nullable String text) {
        return text == null ? "" : text.strip();
    }

    private static ResponseEntity<EntryJson> created(Entry entry) {
        return ResponseEntity.status(HttpStatus.CREATED)
                .location(UriComponentsBuilder.fromPath("/api/ledger/entries/{id}")
                        .build(entry.id()))
                .body(EntryJson.of(entry));
    }
}
