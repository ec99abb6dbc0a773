package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.OwnWoods;
import org.scarfwright.rack.OwnWoods.VersionedWood;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.EditVersion;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Bonding;
import org.scarfwright.wood.Caution;
import org.scarfwright.wood.DimensionalChange;
import org.scarfwright.wood.GrainDirection;
import org.scarfwright.wood.ProtectedWood;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
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

/** The woods for programs: the published ones to read, the shop's own to add, edit and remove. */
@RestController
@RequestMapping("/api/wood/species")
@Tag(name = "Wood", description = "Published figures of woods, the shop’s own woods, and what moisture does to them")
class WoodApi {
    private static final Set<String> ANSWERS = Set.of(
            "id",
            "own",
            "mechanicalSource",
            "shrinkageSource",
            "bondingSource",
            "bonding",
            "movementRadial",
            "movementTangential",
            "sensitiser",
            "shrinkageNotChecked",
            "lookUpAppendix");

    private final SpeciesCatalog catalog;
    private final OwnWoods woods;

    WoodApi(SpeciesCatalog catalog, OwnWoods woods) {
        this.catalog = catalog;
        this.woods = woods;
    }

    /** One wood; figures as printed, null where none is published. */
    record SpeciesJson(
            String id,
            String commonName,
            String botanicalName,

            @Schema(description = "True for a wood this shop entered itself")
            boolean own,

            @Schema(description = "Oven-dry mass over volume, 0.10 to 1.40") @Nullable
            Double specificGravity,

            @Schema(description = "12 % MC volume or green volume; in input also 12 or green") @Nullable
            String specificGravityBasis,

            @Schema(description = "Modulus of rupture at 12 %, pounds per square inch, 1000 to 60000") @Nullable
            Integer morPsi,

            @Schema(description = "Modulus of elasticity at 12 %, millions of pounds per square inch, 0.1 to 10")
            @Nullable
            Double moeMpsi,

            @Schema(description = "Side hardness at 12 %, pounds, 50 to 10000") @Nullable
            Integer sideHardnessLbf,

            @Schema(description = "Total radial shrinkage, percent, 0.1 to 30") @Nullable
            Double shrinkRadialPct,

            @Schema(description = "Total tangential shrinkage, percent, 0.1 to 30") @Nullable
            Double shrinkTangentialPct,

            @Schema(description = "Total volumetric shrinkage, percent, 0.1 to 49.9") @Nullable
            Double shrinkVolumetricPct,

            @Schema(description = "easily, well, satisfactorily or with difficulty") @Nullable
            String bondingClass,

            @Schema(description = "The class of bonding in plain words")
            String bonding,

            @Schema(
                    description =
                            "Share a size changes by for each 1 % of moisture, quarter-sawn; a range where published"
                                    + " figures differ",
                    example = "0.00165")
            @Nullable
            String movementRadial,

            @Schema(description = "The same, flat-sawn", example = "0.00353") @Nullable
            String movementTangential,

            String mechanicalSource,
            String shrinkageSource,
            @Nullable String bondingSource,

            @Schema(description = "Where the shop has the figures of its own wood from; null for a published one")
            @Nullable
            String source,

            @Schema(description = "What some people react to in this wood; not checked against its source") @Nullable
            String sensitiser,

            @Schema(description = "True when a shrinkage figure could not be checked against a printed table")
            boolean shrinkageNotChecked,

            @Schema(description = "True when the current appendices on trade in endangered species should be looked up")
            boolean lookUpAppendix) {
        static SpeciesJson of(Species wood) {
            return new SpeciesJson(
                    wood.id(),
                    wood.commonName(),
                    wood.botanicalName(),
                    wood.own(),
                    wood.specificGravity(),
                    wood.specificGravityBasis(),
                    wood.morPsi(),
                    wood.moeMpsi(),
                    wood.sideHardnessLbf(),
                    wood.shrinkRadialPct(),
                    wood.shrinkTangentialPct(),
                    wood.shrinkVolumetricPct(),
                    wood.bondingClass(),
                    Bonding.note(wood),
                    movement(wood, GrainDirection.RADIAL),
                    movement(wood, GrainDirection.TANGENTIAL),
                    wood.mechanicalSource(),
                    wood.shrinkageSource(),
                    wood.bondingSource(),
                    wood.own() ? WoodForm.sourceTyped(wood) : null,
                    Caution.sensitiser(wood).map(Caution::text).orElse(null),
                    wood.shrinkageNotChecked(),
                    ProtectedWood.lookUpAppendix(wood));
        }

        private static @Nullable String movement(Species wood, GrainDirection direction) {
            return DimensionalChange.of(wood, direction).map(SpeciesView::words).orElse(null);
        }
    }

    @GetMapping
    @Operation(
            summary = "The woods and their figures",
            description = "Inch-pound figures as printed, averages of clear small specimens and never design values.")
    List<SpeciesJson> species() {
        return catalog.all().stream().map(SpeciesJson::of).toList();
    }

    @GetMapping("/{id}")
    @Operation(summary = "One wood")
    @ApiResponse(responseCode = "200", description = "The wood, with its ETag")
    @ApiResponse(responseCode = "404", description = "There is none of that id")
    ResponseEntity<SpeciesJson> one(
            @Parameter(in = ParameterIn.PATH, example = "maple_sugar") @PathVariable String id) {
        return answer(WoodController.find(woods, id));
    }

    @PostMapping
    @Operation(
            summary = "Add a wood of the shop",
            description =
                    "Only commonName must be given; its id is made from it. It is used in the rack, designs and imports"
                            + " like any other.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SpeciesJson.class))))
    @ApiResponse(responseCode = "201", description = "Added")
    @ApiResponse(responseCode = "422", description = "Refused, with a pointer, the value and a sentence for each fault")
    ResponseEntity<SpeciesJson> add(@RequestBody JsonNode body) {
        VersionedWood added = woods.add(read(body, ""));
        return ResponseEntity.created(
                        URI.create("/api/wood/species/" + added.wood().id()))
                .eTag(EditVersion.etag(added.version()))
                .body(SpeciesJson.of(added.wood()));
    }

    @PutMapping("/{id}")
    @Operation(
            summary = "Change a wood of the shop",
            description = "Replaces all its figures. Needs If-Match with the ETag that was read.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SpeciesJson.class))))
    @ApiResponse(responseCode = "200", description = "Changed")
    @ApiResponse(responseCode = "409", description = "A published wood, whose figures stay as printed")
    @ApiResponse(responseCode = "412", description = "It was changed since")
    @ApiResponse(responseCode = "428", description = "If-Match is missing")
    ResponseEntity<SpeciesJson> change(
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        own(id);
        if (!woods.change(seen, read(body, id))) {
            throw EditConditionException.stale();
        }
        return answer(WoodController.find(woods, id));
    }

    @DeleteMapping("/{id}")
    @Operation(summary = "Remove a wood of the shop", description = "Only while nothing uses it. Needs If-Match.")
    @ApiResponse(responseCode = "204", description = "Removed")
    @ApiResponse(responseCode = "409", description = "A piece or a design uses it, or it is a published wood")
    ResponseEntity<Void> remove(
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        long seen = EditVersion.seen(ifMatch);
        own(id);
        if (!woods.remove(seen, id)) {
            throw EditConditionException.stale();
        }
        return ResponseEntity.noContent().build();
    }

    private void own(String id) {
        Species wood = WoodController.find(woods, id).wood();
        if (!wood.own()) {
            throw new ConflictException(wood.commonName() + " is a published wood, and its figures stay as printed.");
        }
    }

    private Species read(JsonNode body, String id) {
        QueryText query = FlatJson.read(body, WoodForm.KEYS, ANSWERS);
        Species wood = WoodForm.read(query, id, catalog.all());
        query.check();
        return java.util.Objects.requireNonNull(wood);
    }

    private static ResponseEntity<SpeciesJson> answer(VersionedWood now) {
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(SpeciesJson.of(now.wood()));
    }
}
