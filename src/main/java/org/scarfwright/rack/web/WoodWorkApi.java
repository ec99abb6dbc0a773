package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.rack.OwnWoods;
import org.scarfwright.rack.PieceReadiness;
import org.scarfwright.shop.ShopAir;
import org.scarfwright.shop.ShopAirBook;
import org.scarfwright.shop.ShopAirBook.VersionedAir;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.EditVersion;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.BoardFeet;
import org.scarfwright.wood.Density;
import org.scarfwright.wood.EquilibriumMoisture;
import org.scarfwright.wood.GrainSlope;
import org.scarfwright.wood.Readiness;
import org.scarfwright.wood.SeamStep;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** Moisture, movement, weight and grain for programs: what the wood pages work out. */
@RestController
@RequestMapping("/api/wood")
@Tag(name = "Wood")
class WoodWorkApi {
    private static final String REFUSED = "Refused, with a pointer, the value and a sentence per parameter";
    private static final List<String> AIR_KEYS = List.of(
            AirForm.NOW_CELSIUS,
            AirForm.NOW_HUMIDITY,
            AirForm.DRY_CELSIUS,
            AirForm.DRY_HUMIDITY,
            AirForm.DAMP_CELSIUS,
            AirForm.DAMP_HUMIDITY);
    private static final Set<String> AIR_ANSWERS =
            Set.of("readOn", "emcNowPercent", "emcDriestPercent", "emcDampestPercent");

    private final SpeciesCatalog catalog;
    private final OwnWoods woods;
    private final ShopAirBook book;
    private final PieceReadiness readiness;
    private final Clock clock;

    WoodWorkApi(SpeciesCatalog catalog, OwnWoods woods, ShopAirBook book, PieceReadiness readiness, Clock clock) {
        this.catalog = catalog;
        this.woods = woods;
        this.book = book;
        this.readiness = readiness;
        this.clock = clock;
    }

    /** The answer to a question for equilibrium moisture. */
    record EmcJson(
            BigDecimal celsius,
            BigDecimal rh,

            @Schema(description = "Moisture content in percent of the oven-dry mass, to 0.01")
            BigDecimal emcPercent) {}

    /** The answer to a question for the humidity that keeps wood. */
    record HumidityJson(
            BigDecimal celsius,
            BigDecimal percent,

            @Schema(description = "Relative humidity in percent, to 0.1")
            BigDecimal rh) {}

    /** Whether a piece is ready. */
    record ReadinessJson(
            @Schema(description = "ready, too wet, too dry, not at rest or not measured")
            String verdict,

            String sentence) {}

    /** The step at a seam. */
    record SeamJson(
            @Schema(description = "Step at each edge, the least published figures give")
            BigDecimal leastStepMm,

            @Schema(description = "Step at each edge, the most they give; the same where they agree")
            BigDecimal mostStepMm) {}

    /** A slope of grain. */
    record SlopeJson(
            @Schema(description = "1 in this, both slopes together")
            BigDecimal slope,

            @Schema(description = "Bending strength left, percent, from Hankinson’s formula")
            BigDecimal lowestBendingPercent,

            BigDecimal highestBendingPercent,

            @Schema(description = "True beyond 1 in 5 and 1 in 25, where no printed row reaches")
            boolean extrapolated,

            String sentence) {}

    /** A block’s weight. */
    record WeightJson(
            @Schema(description = "Null where it follows from figures that are not known") @Nullable
            BigDecimal grams,

            @Nullable BigDecimal kgPerCubicMetre,
            BigDecimal boardFeet) {}

    /** The shop's air. */
    record AirJson(
            @Schema(description = "What the hygrometer shows, -1.1 to 54.4 °C; null when nobody read it") @Nullable
            BigDecimal nowCelsius,

            @Schema(description = "5 to 90 %") @Nullable BigDecimal nowRh,

            @Schema(description = "The day it was read; set when it is written") @Nullable
            LocalDate readOn,

            @Schema(description = "Driest air of the year, -1.1 to 54.4 °C")
            BigDecimal dryCelsius,

            @Schema(description = "5 to 90 %") BigDecimal dryRh,

            @Schema(description = "Dampest air of the year, -1.1 to 54.4 °C")
            BigDecimal dampCelsius,

            @Schema(description = "5 to 90 %") BigDecimal dampRh,

            @Schema(description = "What the air now brings wood to") @Nullable
            BigDecimal emcNowPercent,

            BigDecimal emcDriestPercent,
            BigDecimal emcDampestPercent) {
        static AirJson of(ShopAir air) {
            ShopAir.Air now = air.now();
            return new AirJson(
                    now == null ? null : now.celsius(),
                    now == null ? null : now.humidity(),
                    air.readOn(),
                    air.driest().celsius(),
                    air.driest().humidity(),
                    air.dampest().celsius(),
                    air.dampest().humidity(),
                    now == null ? null : emcOf(now),
                    emcOf(air.driest()),
                    emcOf(air.dampest()));
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
    @ApiResponse(responseCode = "422", description = REFUSED)
    EmcJson emc(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        ShopAir.Air read = AirForm.read(query);
        query.check();
        ShopAir.Air air = Objects.requireNonNull(read);
        return new EmcJson(air.celsius(), air.humidity(), emcOf(air));
    }

    @GetMapping("/humidity")
    @Operation(
            summary = "The humidity that keeps wood at a moisture content",
            description = "The inverse of equation 4-5; refused where no humidity from 5 to 90 % keeps it.")
    @Parameter(
            name = "celsius",
            in = ParameterIn.QUERY,
            required = true,
            description = "Temperature of the air, -1.1 to 54.4 °C",
            example = "20",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "percent",
            in = ParameterIn.QUERY,
            required = true,
            description = "Moisture content to keep, about 1.3 to 20 % at 20 °C",
            example = "7",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The relative humidity")
    @ApiResponse(responseCode = "422", description = REFUSED)
    HumidityJson humidity(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        BigDecimal readCelsius = AirForm.celsius(query, "celsius");
        Moisture readContent = query.read("percent", "Moisture to keep", "7", Moisture::parse);
        query.check();
        BigDecimal celsius = Objects.requireNonNull(readCelsius);
        Moisture content = Objects.requireNonNull(readContent);
        EquilibriumMoisture.contentRefusal(celsius, content)
                .ifPresent(reason -> query.refuse("percent", "Moisture to keep", reason));
        query.check();
        return new HumidityJson(
                celsius, content.toPercent(), rounded(EquilibriumMoisture.humidityKeeping(celsius, content), 1));
    }

    @GetMapping("/readiness")
    @Operation(
            summary = "Is wood of this moisture ready to be glued",
            description = "By the shop’s rules, and in the shop’s air where its hygrometer was read.")
    @Parameter(
            name = "percent",
            in = ParameterIn.QUERY,
            description = "Moisture content, 0 to 300 %; left out when it was not measured",
            example = "8",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The verdict and its sentence")
    @ApiResponse(responseCode = "422", description = REFUSED)
    ReadinessJson readiness(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        Moisture content = query.has("percent") ? query.read("percent", "Moisture", "8", Moisture::parse) : null;
        query.check();
        Readiness answer = readiness.of(content);
        return new ReadinessJson(
                answer.verdict().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '), answer.sentence());
    }

    @GetMapping("/seam")
    @Operation(
            summary = "Step between two woods at a seam over the year",
            description = "Half of what one wood moves more than the other, unglued; 6 to 14 % moisture.")
    @Parameter(
            name = "one",
            in = ParameterIn.QUERY,
            required = true,
            description = "A wood by id or name",
            example = "maple_sugar",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "oneCut",
            in = ParameterIn.QUERY,
            required = true,
            description = "flat or quarter",
            example = "flat",
            schema =
                    @Schema(
                            type = "string",
                            allowableValues = {"flat", "quarter"}))
    @Parameter(
            name = "other",
            in = ParameterIn.QUERY,
            required = true,
            description = "The other wood",
            example = "walnut_black",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "otherCut",
            in = ParameterIn.QUERY,
            required = true,
            description = "flat or quarter",
            example = "quarter",
            schema =
                    @Schema(
                            type = "string",
                            allowableValues = {"flat", "quarter"}))
    @Parameter(
            name = "width",
            in = ParameterIn.QUERY,
            required = true,
            description = "Width of the seam, above 0 and up to 1200 mm; a bare number is millimetres",
            example = "60 mm",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "lowest",
            in = ParameterIn.QUERY,
            required = true,
            description = "Lowest moisture of the year, 6 to 14 %",
            example = "7",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "highest",
            in = ParameterIn.QUERY,
            required = true,
            description = "Highest moisture of the year, 6 to 14 %",
            example = "10",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The step")
    @ApiResponse(responseCode = "422", description = REFUSED)
    SeamJson seam(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        SeamForm.Seam read = SeamForm.read(query, catalog.all(), LengthUnit.MM);
        query.check();
        SeamStep step = Objects.requireNonNull(read).step();
        return new SeamJson(step.least().toMm(), step.most().toMm());
    }

    @GetMapping("/slope")
    @Operation(
            summary = "What a slope of grain leaves of the strength",
            description = "Wood Handbook (FPL-GTR-282), Table 5-12; between its rows Hankinson’s formula.")
    @Parameter(
            name = "first",
            in = ParameterIn.QUERY,
            required = true,
            description = "1 in this, 1 to 1000",
            example = "12",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "second",
            in = ParameterIn.QUERY,
            description = "On the other face, 1 to 1000; left out when only one was seen",
            example = "18",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The slopes together and what is left")
    @ApiResponse(responseCode = "422", description = REFUSED)
    SlopeJson slope(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        SlopeForm.Slopes read = SlopeForm.read(query);
        query.check();
        double slope = Objects.requireNonNull(read).combined();
        double[] kept = GrainSlope.bendingKept(slope);
        return new SlopeJson(
                rounded(slope, 3),
                rounded(kept[0], 1),
                rounded(kept[1], 1),
                GrainSlope.isExtrapolated(slope),
                GrainSlope.words(slope));
    }

    @GetMapping("/species/{id}/weight")
    @Operation(
            summary = "What a piece or a finished blank weighs",
            description = "From the average specific gravity of the wood; a single board can easily be a tenth off.")
    @Parameter(
            name = "length",
            in = ParameterIn.QUERY,
            required = true,
            description = "Above 0 and up to 6000 mm; a bare number is millimetres",
            example = "640",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "width",
            in = ParameterIn.QUERY,
            required = true,
            description = "Above 0 and up to 1200 mm",
            example = "70",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "thickness",
            in = ParameterIn.QUERY,
            required = true,
            description = "Above 0 and up to 300 mm",
            example = "22",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "moisture",
            in = ParameterIn.QUERY,
            required = true,
            description = "0 to 30 %",
            example = "8",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The weight")
    @ApiResponse(responseCode = "422", description = REFUSED)
    WeightJson weight(@PathVariable String id, @Parameter(hidden = true) HttpServletRequest request) {
        Species wood = WoodController.find(woods, id).wood();
        QueryText query = new QueryText(request.getParameterMap());
        BlockForm.Block read = BlockForm.read(query, LengthUnit.MM);
        query.check();
        BlockForm.Block block = Objects.requireNonNull(read);
        return new WeightJson(
                Density.grams(wood, block.moisture(), block.volume()).orElse(null),
                Density.of(wood, block.moisture()).map(d -> rounded(d, 1)).orElse(null),
                BoardFeet.of(block.volume()));
    }

    @GetMapping("/air")
    @Operation(
            summary = "The shop’s air",
            description = "What its hygrometer shows, and the driest and dampest air of its year.")
    ResponseEntity<AirJson> air() {
        return answer(book.air());
    }

    @PutMapping("/air")
    @Operation(
            summary = "Change the shop’s air",
            description =
                    "Needs If-Match with the ETag that was read. Leave nowCelsius and nowRh out when nobody read it.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = AirJson.class))))
    @ApiResponse(responseCode = "200", description = "Changed")
    @ApiResponse(responseCode = "412", description = "It was changed since")
    @ApiResponse(responseCode = "428", description = "If-Match is missing")
    ResponseEntity<AirJson> changeAir(
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        QueryText query = FlatJson.read(body, AIR_KEYS, AIR_ANSWERS);
        ShopAir wanted = AirForm.shopAir(query, LocalDate.now(clock));
        query.check();
        if (!book.change(seen, Objects.requireNonNull(wanted))) {
            throw EditConditionException.stale();
        }
        return answer(book.air());
    }

    private static ResponseEntity<AirJson> answer(VersionedAir now) {
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(AirJson.of(now.air()));
    }

    private static BigDecimal emcOf(ShopAir.Air air) {
        return rounded(EquilibriumMoisture.percent(air.celsius(), air.humidity()), 2);
    }

    private static BigDecimal rounded(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
    }
}
