package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.PieceField;

/** What a request to measure a piece again may say; only the description of the API is made from its components. */
@Schema(
        name = "Measuring",
        description =
                "Readings of warp and moisture; at least one. Lengths are decimal millimetres or text as people write"
                        + " them, in the key with or without Mm.")
record MeasuringJson(
        @Schema(description = "Rise along the length, flat face; 0 to a tenth of the length", minimum = "0") @Nullable
        BigDecimal bowMm,

        @Schema(description = "Rise along the length, edge; 0 to a tenth of the length", minimum = "0") @Nullable
        BigDecimal crookMm,

        @Schema(
                description = "Rise across the width, the most along the piece; 0 to a tenth of the width",
                minimum = "0")
        @Nullable
        BigDecimal cupMm,

        @Schema(description = "Lift of the fourth corner; 0 to a quarter of the width", minimum = "0") @Nullable
        BigDecimal twistMm,

        @Schema(
                description = "Instead of twistMm: the gap winding sticks show; 0 to a quarter of stickLengthMm",
                minimum = "0")
        @Nullable
        BigDecimal stickGapMm,

        @Schema(description = "Length of each stick, needed beside a gap; above 0") @Nullable
        BigDecimal stickLengthMm,

        @Schema(description = "From one stick to the other along the piece; the piece's length when left out") @Nullable
        BigDecimal stickDistanceMm,

        @Schema(
                description = "Rise under a straightedge half as long, on the middle of the face; at most bowMm",
                minimum = "0")
        @Nullable
        BigDecimal middleBowMm,

        @Schema(description = "The same on the edge; at most crookMm", minimum = "0") @Nullable
        BigDecimal middleCrookMm,

        @Schema(description = "Twist of the middle half over the width; 0 to a quarter of the width", minimum = "0")
        @Nullable
        BigDecimal middleTwistMm,

        @Schema(description = "Instead of middleTwistMm: the gap with the sticks at the quarter points", minimum = "0")
        @Nullable
        BigDecimal middleStickGapMm,

        @Schema(description = "Day of the warp reading, not after today; today when left out") @Nullable
        LocalDate warpOn,

        @Schema(description = "Percent, 0 to 100", minimum = "0", maximum = "100") @Nullable
        BigDecimal moisture,

        @Schema(allowableValues = {"pin", "pinless", "oven"}) @Nullable
        String meter,

        @Schema(description = "Day of the moisture reading, not after today; today when left out") @Nullable
        LocalDate moistureOn,

        @Schema(description = "Day of both, where they have none of their own") @Nullable
        LocalDate measuredOn) {

    static final Set<PieceField> FIELDS = EnumSet.of(
            PieceField.BOW,
            PieceField.CROOK,
            PieceField.CUP,
            PieceField.TWIST,
            PieceField.STICK_GAP,
            PieceField.STICK_LENGTH,
            PieceField.STICK_DISTANCE,
            PieceField.MIDDLE_BOW,
            PieceField.MIDDLE_CROOK,
            PieceField.MIDDLE_TWIST,
            PieceField.MIDDLE_STICK_GAP,
            PieceField.WARP_ON,
            PieceField.MOISTURE,
            PieceField.METER,
            PieceField.MOISTURE_ON,
            PieceField.MEASURED_ON);
}
