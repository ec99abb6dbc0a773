package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.GrainCut;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.rack.Zone;

/** A piece as the API gives it. What it gives can be sent back changed. */
@Schema(
        name = "Piece",
        description = "A piece of wood. Lengths are decimal millimetres; in input a length may also be text"
                + " as people write it (\"25 3/8 in\"), in the key with or without Mm.")
record PieceJson(
        @Schema(description = "1 to 12 letters, digits or hyphens; made when left out", example = "M-14")
        String code,

        @Schema(accessMode = Schema.AccessMode.READ_ONLY) long version,

        @Schema(
                accessMode = Schema.AccessMode.READ_ONLY,
                allowableValues = {"on_rack", "reserved", "at_bench", "used_up", "scrapped"})
        String state,

        @Schema(description = "Id or name of a wood; null for a lamination", example = "maple_sugar") @Nullable
        String wood,

        @Schema(description = "Strips across the width from the near edge; empty for solid wood")
        List<Strip> lamination,

        @Schema(example = "640", description = "1 to 6000") BigDecimal lengthMm,

        @Schema(example = "25 3/8 in", description = "The length as it was written")
        String length,

        @Schema(example = "70", description = "1 to 1200") BigDecimal widthMm,
        @Schema(description = "The width as it was written") String width,
        @Schema(example = "22", description = "1 to 300") BigDecimal thicknessMm,

        @Schema(description = "The thickness as it was written")
        String thickness,

        @Schema(allowableValues = {"flat", "rift", "quarter"}) @Nullable
        String grain,

        @Schema(description = "Grain runs at 1 in this along the piece") @Nullable
        Integer grainSlope,

        @Schema(description = "Percent", example = "8.5") @Nullable
        BigDecimal moisture,

        @Schema(description = "Day of the moisture reading; today when left out") @Nullable
        LocalDate moistureOn,

        @Schema(allowableValues = {"pin", "pinless", "oven"}) @Nullable
        String meter,

        @Schema(description = "Rise along the length, flat face; null when nobody measured the warp") @Nullable
        BigDecimal bowMm,

        @Schema(description = "Rise along the length, edge") @Nullable
        BigDecimal crookMm,

        @Schema(description = "Rise across the width") @Nullable
        BigDecimal cupMm,

        @Schema(description = "Lift of the fourth corner with three corners down") @Nullable
        BigDecimal twistMm,

        @Schema(
                description =
                        "A second reading: rise under a straightedge half as long as the piece, on the middle of it;"
                                + " null when not read, at most bowMm")
        @Nullable
        BigDecimal middleBowMm,

        @Schema(description = "The same on the hollow edge; at most crookMm") @Nullable
        BigDecimal middleCrookMm,

        @Schema(description = "Twist of the middle half over the piece's width") @Nullable
        BigDecimal middleTwistMm,

        @Schema(description = "Day of the warp reading; today when left out") @Nullable
        LocalDate warpOn,

        BigDecimal trimLeftMm,
        BigDecimal trimRightMm,
        List<Flaw> defects,

        @Schema(description = "Laid aside as warped: offered for heads only")
        boolean setAside,

        @Schema(description = "A piece that is set aside may be a neck all the same")
        boolean neckAllowed,

        @Nullable String lot,
        @Nullable LocalDate lotReadyOn,
        @Nullable String place,

        @Schema(description = "In the shop's currency", example = "18.50") @Nullable
        BigDecimal cost,

        String note,
        @Schema(accessMode = Schema.AccessMode.READ_ONLY) LocalDate since,
        @Schema(accessMode = Schema.AccessMode.READ_ONLY) BigDecimal volumeMm3,

        @Schema(
                accessMode = Schema.AccessMode.READ_ONLY,
                description = "Clear stretches between end trims and structural defects, from the left end")
        List<Stretch> zones) {

    @Schema(name = "Strip", description = "One strip of a lamination")
    record Strip(
            @Schema(example = "walnut_black") String wood,
            @Schema(example = "5") BigDecimal widthMm,
            @Nullable String grain) {}

    @Schema(name = "Defect", description = "A flaw, measured from the left end and the near edge")
    record Flaw(
            @Schema(allowableValues = {"knot", "check", "pith", "stain", "screw_hole", "other"})
            String kind,

            BigDecimal fromLengthMm,
            BigDecimal toLengthMm,

            @Schema(description = "Left out: the whole width")
            BigDecimal fromWidthMm,

            BigDecimal toWidthMm,
            boolean structural) {}

    @Schema(name = "Zone", description = "A clear stretch")
    record Stretch(BigDecimal fromMm, BigDecimal toMm) {}

    static PieceJson of(Piece p) {
        MoistureReading moisture = p.moisture();
        boolean measured = p.warp().isMeasured();
        return new PieceJson(
                p.code(),
                p.version(),
                word(p.state()),
                p.wood() instanceof PieceWood.Solid solid ? solid.speciesId() : null,
                p.wood() instanceof PieceWood.Lamination lamination
                        ? lamination.strips().stream()
                                .map(s -> new Strip(s.speciesId(), s.width().toMm(), grain(s.grain())))
                                .toList()
                        : List.of(),
                p.length().length().toMm(),
                p.length().typed(),
                p.width().length().toMm(),
                p.width().typed(),
                p.thickness().length().toMm(),
                p.thickness().typed(),
                grain(p.grain()),
                p.grainSlope(),
                moisture == null ? null : moisture.content().toPercent(),
                moisture == null ? null : moisture.readOn(),
                moisture == null || moisture.meter() == MoistureReading.Meter.UNKNOWN ? null : word(moisture.meter()),
                measured ? p.warp().bow().toMm() : null,
                measured ? p.warp().crook().toMm() : null,
                measured ? p.warp().cup().toMm() : null,
                measured ? p.warp().twist().toMm() : null,
                toMm(p.warp().middle().bow()),
                toMm(p.warp().middle().crook()),
                toMm(p.warp().middle().twist()),
                p.warp().readOn(),
                p.trimLeft().toMm(),
                p.trimRight().toMm(),
                p.defects().stream().map(PieceJson::flaw).toList(),
                p.setAside(),
                p.neckAllowed(),
                p.lot(),
                p.lotReadyOn(),
                p.place(),
                p.cost() == null ? null : p.cost().toDecimal(),
                p.note(),
                p.since(),
                p.volume().toMm3(),
                UsableSize.zones(p).stream().map(PieceJson::stretch).toList());
    }

    private static Flaw flaw(Defect d) {
        return new Flaw(
                word(d.kind()),
                d.fromLength().toMm(),
                d.toLength().toMm(),
                d.fromWidth().toMm(),
                d.toWidth().toMm(),
                d.structural());
    }

    private static Stretch stretch(Zone zone) {
        return new Stretch(zone.from().toMm(), zone.to().toMm());
    }

    static @Nullable BigDecimal toMm(@Nullable Length length) {
        return length == null ? null : length.toMm();
    }

    static @Nullable String grain(GrainCut grain) {
        return grain == GrainCut.UNKNOWN ? null : word(grain);
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
