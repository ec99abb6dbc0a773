package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.ImportResult;
import org.scarfwright.rack.PieceFacts;
import org.scarfwright.rack.PieceWords;

/**
 * What a rack file became or would become.
 *
 * @param preview nothing was saved
 * @param added rows that are new pieces
 * @param unchanged rows that are on the rack already
 * @param refused rows that are not right; then nothing was saved
 */
record ImportJson(boolean preview, long added, long unchanged, long refused, List<Row> rows) {

    /**
     * One row of the file.
     *
     * @param row as a spreadsheet numbers it; the header is row 1
     * @param fate new, unchanged or refused
     * @param code empty when the row is refused, or when one will be made
     */
    record Row(
            int row,
            String fate,
            @Nullable String code,
            @Nullable String wood,
            @Nullable BigDecimal lengthMm,
            @Nullable BigDecimal widthMm,
            @Nullable BigDecimal thicknessMm,
            String remark) {}

    static ImportJson of(ImportResult result) {
        return new ImportJson(
                !result.saved(),
                result.added(),
                result.unchanged(),
                result.refused(),
                result.rows().stream().map(ImportJson::row).toList());
    }

    private static Row row(ImportResult.Row row) {
        PieceFacts facts = row.facts();
        return new Row(
                row.number(),
                PieceJson.word(row.outcome()),
                row.code(),
                facts == null ? null : PieceWords.wood(facts.wood()) + PieceWords.lamination(facts.wood()),
                facts == null ? null : facts.length().length().toMm(),
                facts == null ? null : facts.width().length().toMm(),
                facts == null ? null : facts.thickness().length().toMm(),
                row.remark());
    }
}
