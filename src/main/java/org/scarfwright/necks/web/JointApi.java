package org.scarfwright.necks.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Objects;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.WoodOnTheRack;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.QueryText;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The joint calculator for programs. */
@RestController
@RequestMapping("/api/joint")
@Tag(name = "Joint", description = "The scarf joint between neck and head")
class JointApi {

    private final Shop shop;
    private final WoodOnTheRack rack;

    JointApi(Shop shop, WoodOnTheRack rack) {
        this.shop = shop;
        this.rack = rack;
    }

    @GetMapping
    @Operation(
            summary = "Compute a scarf joint",
            description =
                    "Every length of both parts for one arrangement, what each order of thinning the head asks, what the "
                            + "saws of the shop say, and which pieces on the rack could serve. A bare number is millimetres; 25 3/8 in and 2.5 cm "
                            + "are read too. A joint that cannot be is refused with the reason.")
    @Parameter(
            name = "arrangement",
            in = ParameterIn.QUERY,
            required = true,
            description = "Which piece lies on which",
            schema =
                    @Schema(
                            type = "string",
                            allowableValues = {"underlaid", "overlaid"}))
    @Parameter(
            name = "angle",
            in = ParameterIn.QUERY,
            required = true,
            description = "Tilt angle in degrees, between 0 and 90",
            example = "10",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "90"))
    @Parameter(
            name = "neckThickness",
            in = ParameterIn.QUERY,
            required = true,
            description = "Thickness of the neck piece at the bevel, up to 300 mm",
            example = "20",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "300"))
    @Parameter(
            name = "headThickness",
            in = ParameterIn.QUERY,
            required = true,
            description = "Thickness of the head piece when it is glued, up to 300 mm",
            example = "15",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "300"))
    @Parameter(
            name = "neckLength",
            in = ParameterIn.QUERY,
            required = true,
            description = "Along the top from the heel end to the nut, up to 6000 mm",
            example = "457",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "6000"))
    @Parameter(
            name = "headLength",
            in = ParameterIn.QUERY,
            required = true,
            description = "Along the front face from the nut to the tip, up to 6000 mm",
            example = "180",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "6000"))
    @Parameter(
            name = "neckWidth",
            in = ParameterIn.QUERY,
            required = true,
            description = "Width of the neck piece, up to 1200 mm",
            example = "60",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "1200"))
    @Parameter(
            name = "headWidth",
            in = ParameterIn.QUERY,
            required = true,
            description = "Width of the head at its widest, up to 1200 mm",
            example = "78",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "1200"))
    @Parameter(
            name = "headStock",
            in = ParameterIn.QUERY,
            description =
                    "Thickness of the head's stock before it is thinned; the head's own thickness when left out, up to 300 mm",
            example = "20",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "300"))
    @Parameter(
            name = "kerf",
            in = ParameterIn.QUERY,
            description = "Kerf of the saw that parts both from one blank; 0 when left out, up to 10 mm",
            example = "1",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "10"))
    @Parameter(
            name = "volute",
            in = ParameterIn.QUERY,
            description = "How far a volute stands out from the neck's back, up to 100 mm",
            example = "8",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "100"))
    @Parameter(
            name = "heelDepth",
            in = ParameterIn.QUERY,
            description = "Depth of the heel from the neck's top, up to 300 mm",
            example = "95",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "300"))
    @Parameter(
            name = "heelLength",
            in = ParameterIn.QUERY,
            description = "Length of the heel along the neck; 100 mm when left out, up to 1000 mm",
            example = "100",
            schema =
                    @Schema(
                            types = {"number", "string"},
                            minimum = "0",
                            maximum = "1000"))
    @Parameter(
            name = "tuners",
            in = ParameterIn.QUERY,
            description =
                    "Centres of tuner holes along the head's front, each from the nut, with commas between, at most 24",
            example = "30, 62, 95",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The joint")
    @ApiResponse(responseCode = "422", description = "Refused, with a pointer, the value and a sentence per parameter")
    JointJson joint(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        Arrangement arrangement = JointForm.arrangement(query);
        JointInput input =
                JointForm.read(query, arrangement == null ? Arrangement.UNDERLAID : arrangement, LengthUnit.MM);
        JointExtras extras = JointExtras.read(query, input, LengthUnit.MM);
        query.check();
        JointForm.refuse(query, ScarfJoint.refusals(Objects.requireNonNull(input)));
        query.check();
        ScarfJoint joint = ScarfJoint.of(input);
        return JointJson.of(joint, extras, shop.saws(), rack.serving(joint));
    }
}
