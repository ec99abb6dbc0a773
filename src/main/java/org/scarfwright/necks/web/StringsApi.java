package org.scarfwright.necks.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.GrainSlope;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Strings, nut and head section for programs. */
@RestController
@RequestMapping("/api/strings")
@Tag(name = "Joint")
class StringsApi {
    private final StringsSection section;

    StringsApi(StringsSection section) {
        this.section = section;
    }

    /** One string. */
    record StringJson(
            String pitch,
            BigDecimal hertz,
            BigDecimal gramsPerMetre,
            @Schema(description = "Newtons") BigDecimal tensionN) {}

    /** A set of strings and what it does at the nut; forces in newtons. */
    record StringsJson(
            List<StringJson> strings,

            @Schema(
                    description =
                            "Angle the strings turn through at the nut, degrees; not above 0 where they do not press on it")
            BigDecimal breakDegrees,

            @Schema(description = "Tension of all strings together")
            BigDecimal tensionN,

            @Schema(description = "2·T·sin(β/2)") BigDecimal resultantN,

            @Schema(description = "T·sin β, square to the neck’s top")
            BigDecimal downforceN,

            @Schema(description = "Bending moment at the nut, newton metres")
            BigDecimal momentNm,

            @Schema(description = "Bending stress in a rectangle of that width and thickness, megapascals")
            BigDecimal bendingStressMpa,

            @Schema(description = "Grain of a one-piece head runs out at 1 in this")
            BigDecimal slope,

            @Schema(description = "What is left of bending strength at that slope, percent, lowest")
            BigDecimal keptLowestPercent,

            BigDecimal keptHighestPercent,

            @Schema(description = "The same of the chosen wood, megapascals; null where its strength is not known")
            @Nullable
            BigDecimal keptLowestMpa,

            @Nullable BigDecimal keptHighestMpa,

            @Schema(description = "What the page says, in sentences")
            List<String> notes) {}

    @GetMapping
    @Operation(
            summary = "Tension of strings, load on the nut, bending at the nut",
            description = "Mersenne’s law, and plane geometry of the tilted head. A bare length is millimetres.")
    @Parameter(
            name = "angle",
            in = ParameterIn.QUERY,
            required = true,
            description = "Tilt of the head, above 0 and below 90 degrees; usual are 7 to 17",
            example = "10",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "strings",
            in = ParameterIn.QUERY,
            required = true,
            description =
                    "Pitch (8 to 5000 Hz, or a note) and mass per length (0.01 to 200 g/m) of each string, up to 24, parted"
                            + " by ; or a new line",
            example = "E4 0.309; E2 5.78",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "scale",
            in = ParameterIn.QUERY,
            description = "Scale length, 100 to 2000 mm; 648 when left out",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "100",
                            maximum = "2000"))
    @Parameter(
            name = "nutHeight",
            in = ParameterIn.QUERY,
            description = "Of the string in the nut above the neck’s top, 0 to 40 mm; 7 when left out",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "40"))
    @Parameter(
            name = "postHeight",
            in = ParameterIn.QUERY,
            description = "Of the winding above the head’s face, 0 to 60 mm; 10 when left out",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "60"))
    @Parameter(
            name = "postDistance",
            in = ParameterIn.QUERY,
            description = "Of the post from the nut, 5 to 500 mm; 60 when left out",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "5",
                            maximum = "500"))
    @Parameter(
            name = "sectionWidth",
            in = ParameterIn.QUERY,
            description = "Width at the nut, 5 to 300 mm; 45 when left out",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "5",
                            maximum = "300"))
    @Parameter(
            name = "sectionThickness",
            in = ParameterIn.QUERY,
            description = "Thickness of the head at the nut, 3 to 100 mm; 16 when left out",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "3",
                            maximum = "100"))
    @Parameter(
            name = "stringsWood",
            in = ParameterIn.QUERY,
            description = "A wood by id, for the one-piece comparison; maple_sugar when left out, none when empty",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "Tensions, loads and the comparison")
    @ApiResponse(responseCode = "422", description = "Refused, with a pointer, the value and a sentence per parameter")
    StringsJson strings(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        Angle readTilt = StringsForm.tilt(query);
        if (!StringsForm.asked(query)) {
            query.refuse(StringsForm.STRINGS, "Strings", "name no string; write one, for example E4 0.309");
        }
        StringsForm.StringSet readSet = section.read(query, LengthUnit.MM);
        query.check();
        Angle tilt = Objects.requireNonNull(readTilt);
        StringsForm.StringSet set = Objects.requireNonNull(readSet);
        return json(set, tilt, StringsSheet.of(set, tilt));
    }

    private static StringsJson json(StringsForm.StringSet set, Angle tilt, StringsSheet sheet) {
        StringsSheet.Numbers n = sheet.numbers();
        List<StringJson> strings = new ArrayList<>();
        for (int i = 0; i < set.strands().size(); i++) {
            StringsForm.Strand strand = set.strands().get(i);
            strings.add(new StringJson(
                    strand.pitch().name(),
                    rounded(strand.pitch().hertz(), 2),
                    strand.gramsPerMetre(),
                    rounded(n.tensions().get(i), 2)));
        }
        double[] percent = GrainSlope.bendingKept(tilt.cot());
        StringsSheet.Kept kept = n.kept();
        return new StringsJson(
                strings,
                rounded(n.breakDegrees(), 3),
                rounded(n.tension(), 2),
                rounded(n.resultant(), 2),
                rounded(n.down(), 2),
                rounded(n.momentNm(), 3),
                rounded(n.stressMpa(), 3),
                rounded(tilt.cot(), 3),
                rounded(percent[0], 1),
                rounded(percent[1], 1),
                kept == null ? null : rounded(kept.lowest(), 1),
                kept == null ? null : rounded(kept.highest(), 1),
                sheet.facts().stream().map(f -> f.name() + ": " + f.value()).toList());
    }

    private static BigDecimal rounded(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
    }
}
