package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.ReadingHistory;
import org.scarfwright.rack.Warp;

/** Readings of one day. */
@Schema(name = "Reading", description = "Readings of one day; null where that was not read")
record ReadingJson(
        LocalDate day,
        @Nullable BigDecimal bowMm,
        @Nullable BigDecimal crookMm,
        @Nullable BigDecimal cupMm,
        @Nullable BigDecimal twistMm,
        @Nullable BigDecimal middleBowMm,
        @Nullable BigDecimal middleCrookMm,
        @Nullable BigDecimal middleTwistMm,

        @Schema(description = "Percent") @Nullable BigDecimal moisture,
        @Nullable String meter,

        @Schema(description = "Points of moisture since the reading of moisture before; below zero when it dried")
        @Nullable
        BigDecimal moistureChange,

        @Schema(description = "Since the reading of warp before; below zero when it went down") @Nullable
        Change change) {

    /** How much each kind of warp grew. */
    @Schema(name = "WarpChange")
    record Change(BigDecimal bowMm, BigDecimal crookMm, BigDecimal cupMm, BigDecimal twistMm) {}

    static ReadingJson of(ReadingHistory.Row row) {
        Warp warp = row.warp();
        MoistureReading moisture = row.moisture();
        ReadingHistory.WarpChange change = row.warpChange();
        return new ReadingJson(
                row.day(),
                warp == null ? null : warp.bow().toMm(),
                warp == null ? null : warp.crook().toMm(),
                warp == null ? null : warp.cup().toMm(),
                warp == null ? null : warp.twist().toMm(),
                warp == null ? null : PieceJson.toMm(warp.middle().bow()),
                warp == null ? null : PieceJson.toMm(warp.middle().crook()),
                warp == null ? null : PieceJson.toMm(warp.middle().twist()),
                moisture == null ? null : moisture.content().toPercent(),
                moisture == null || moisture.meter() == MoistureReading.Meter.UNKNOWN
                        ? null
                        : PieceJson.word(moisture.meter()),
                row.moistureChange() == null
                        ? null
                        : BigDecimal.valueOf(row.moistureChange().hundredths(), 2),
                change == null
                        ? null
                        : new Change(
                                change.bow().toMm(),
                                change.crook().toMm(),
                                change.cup().toMm(),
                                change.twist().toMm()));
    }
}
