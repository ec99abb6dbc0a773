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
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.web.QueryText;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The joint calculator for programs. */
@RestController
@RequestMapping("/api/joint")
@Tag(name = "Joint", description = "The scarf joint between neck and head")
class JointApi {

    /** Lengths in millimetres, rounded to 0.001; signs and symbols as in {@link ScarfJoint}. */
    record JointJson(
            @Schema(description = "underlaid or overlaid") String arrangement,
            @Schema(description = "Tilt angle in degrees") BigDecimal angle,

            @Schema(description = "Neck piece along its top, heel end to the start of its bevel")
            BigDecimal neckFrontMm,

            @Schema(description = "Neck piece along its back")
            BigDecimal neckBackMm,

            @Schema(description = "Head piece along its front face")
            BigDecimal headFrontMm,

            @Schema(description = "Head piece along its back")
            BigDecimal headBackMm,

            @Schema(description = "Length of the glue face in the side view")
            BigDecimal glueFaceMm,

            @Schema(description = "Glue face times the narrower width, in square millimetres")
            BigDecimal glueAreaMm2,

            @Schema(description = "Seam on the head's front face, from the nut; null where there is none") @Nullable
            BigDecimal seamFromNutMm,

            @Schema(description = "Where the joint ends on the back, from the nut, above 0 toward the tip")
            BigDecimal backEndFromNutMm,

            @Schema(description = "Width of each of two wings beside the neck wood; 0 where none are needed")
            BigDecimal wingWidthMm,

            @Schema(description = "The scarf is 1 to this: cot of the angle")
            BigDecimal slope,

            @Schema(description = "What can be made but is unusual, in sentences")
            List<String> notes) {

        static JointJson of(ScarfJoint joint) {
            return new JointJson(
                    joint.input().arrangement().word(),
                    joint.input().angle().toDegrees(),
                    joint.neckFront().toMm(),
                    joint.neckBack().toMm(),
                    joint.headFront().toMm(),
                    joint.headBack().toMm(),
                    joint.glueFace().toMm(),
                    joint.glueArea().toMm2().setScale(3, RoundingMode.HALF_UP),
                    mm(joint.seamFromNut()),
                    joint.backEndFromNut().toMm(),
                    joint.wingWidth().toMm(),
                    BigDecimal.valueOf(joint.slope()).setScale(4, RoundingMode.HALF_UP),
                    JointNotes.of(joint.input()));
        }

        private static @Nullable BigDecimal mm(@Nullable Length length) {
            return length == null ? null : length.toMm();
        }
    }

    @GetMapping
    @Operation(
            summary = "Compute a scarf joint",
            description =
                    "Every length of both parts for one arrangement. A bare number is millimetres; 25 3/8 in and 2.5 cm "
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
            schema = @Schema(type = "string"))
    @Parameter(
            name = "neckThickness",
            in = ParameterIn.QUERY,
            required = true,
            description = "Thickness of the neck piece at the bevel, up to 300 mm",
            example = "20",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "headThickness",
            in = ParameterIn.QUERY,
            required = true,
            description = "Thickness of the head piece when it is glued, up to 300 mm",
            example = "15",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "neckLength",
            in = ParameterIn.QUERY,
            required = true,
            description = "Along the top from the heel end to the nut, up to 6000 mm",
            example = "457",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "headLength",
            in = ParameterIn.QUERY,
            required = true,
            description = "Along the front face from the nut to the tip, up to 6000 mm",
            example = "180",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "neckWidth",
            in = ParameterIn.QUERY,
            required = true,
            description = "Width of the neck piece, up to 1200 mm",
            example = "60",
            schema = @Schema(type = "string"))
    @Parameter(
            name = "headWidth",
            in = ParameterIn.QUERY,
            required = true,
            description = "Width of the head at its widest, up to 1200 mm",
            example = "78",
            schema = @Schema(type = "string"))
    @ApiResponse(responseCode = "200", description = "The joint")
    @ApiResponse(responseCode = "422", description = "Refused, with a pointer, the value and a sentence per parameter")
    JointJson joint(@Parameter(hidden = true) HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        Arrangement arrangement = JointForm.arrangement(query);
        JointInput input =
                JointForm.read(query, arrangement == null ? Arrangement.UNDERLAID : arrangement, LengthUnit.MM);
        query.check();
        JointForm.refuse(query, ScarfJoint.refusals(Objects.requireNonNull(input)));
        query.check();
        return JointJson.of(ScarfJoint.of(input));
    }
}
