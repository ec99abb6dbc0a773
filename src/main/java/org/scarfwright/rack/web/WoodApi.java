package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.EquilibriumMoisture;
import org.scarfwright.wood.ProtectedWood;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** What is known of woods, for programs. */
@RestController
@RequestMapping("/api/wood")
@Tag(name = "Wood", description = "Published figures of woods, and the moisture they come to in air")
class WoodApi {
    private final SpeciesCatalog catalog;

    WoodApi(SpeciesCatalog catalog) {
        this.catalog = catalog;
    }

    /** The answer to a question for equilibrium moisture. */
    record EmcJson(
            BigDecimal celsius,
            BigDecimal rh,

            @Schema(description = "Moisture content in percent of the oven-dry mass, to 0.01")
            BigDecimal emcPercent) {}

    /** One wood; figures as printed, null where none is published. */
    record SpeciesJson(
            String id,
            String commonName,
            String botanicalName,
            @Nullable Double specificGravity,
            @Nullable String specificGravityBasis,

            @Schema(description = "Modulus of rupture at 12 %, pounds per square inch") @Nullable
            Integer morPsi,

            @Schema(description = "Modulus of elasticity at 12 %, millions of pounds per square inch") @Nullable
            Double moeMpsi,

            @Schema(description = "Side hardness at 12 %, pounds") @Nullable
            Integer sideHardnessLbf,

            @Schema(description = "Total shrinkage, percent") @Nullable
            Double shrinkRadialPct,

            @Nullable Double shrinkTangentialPct,
            @Nullable Double shrinkVolumetricPct,
            @Nullable String bondingClass,
            String mechanicalSource,
            String shrinkageSource,
            @Nullable String bondingSource,

            @Schema(description = "True when a shrinkage figure could not be checked against a printed table")
            boolean shrinkageNotChecked,

            @Schema(description = "True when the current appendices on trade in endangered species should be looked up")
            boolean lookUpAppendix) {
        static SpeciesJson of(Species wood) {
            return new SpeciesJson(
                    wood.id(),
                    wood.commonName(),
                    wood.botanicalName(),
                    wood.specificGravity(),
                    wood.specificGravityBasis(),
                    wood.morPsi(),
                    wood.moeMpsi(),
                    wood.sideHardnessLbf(),
                    wood.shrinkRadialPct(),
                    wood.shrinkTangentialPct(),
                    wood.shrinkVolumetricPct(),
                    wood.bondingClass(),
                    wood.mechanicalSource(),
                    wood.shrinkageSource(),
                    wood.bondingSource(),
                    wood.shrinkageNotChecked(),
                    ProtectedWood.lookUpAppendix(wood));
        }
    }

    @GetMapping("/emc")
    @Operation(
            summary = "Equilibrium moisture content",
            description = "What moisture content wood comes to in air. Wood Handbook (FPL-GTR-282), equation 4-5.")
    @Parameter(
            name = "celsius",
            in = ParameterIn.QUERY,
            required = true,
            description = "Temperature of the air, -1.1 to 54.4 °C",
            example = "21.1",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "rh",
            in = ParameterIn.QUERY,
            required = true,
            description = "Relative humidity, 5 to 90 %",
            example = "65",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The moisture content")
    @ApiResponse(responseCode = "422", description = "Refused, with a pointer, the value and a sentence per parameter")
    EmcJson emc(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        AirForm.Air read = AirForm.read(query);
        query.check();
        AirForm.Air air = Objects.requireNonNull(read);
        return new EmcJson(
                air.celsius(),
                air.humidity(),
                BigDecimal.valueOf(EquilibriumMoisture.percent(air.celsius(), air.humidity()))
                        .setScale(2, RoundingMode.HALF_UP));
    }

    @GetMapping("/species")
    @Operation(
            summary = "The woods and their published figures",
            description = "Inch-pound figures as printed, averages of clear small specimens and never design values.")
    List<SpeciesJson> species() {
        return catalog.all().stream().map(SpeciesJson::of).toList();
    }
}
