package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.ImportResult;
import org.scarfwright.rack.PieceFacts;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.FieldError;

/**
 * What a rack file became or would become.
 *
 * @param preview nothing was saved
 * @param added rows that are new pieces
 * @param unchanged rows that are on the rack already
 * @param refused rows that are not right; then nothing was saved
 * @param errors what is not right, the first of many
 */
record ImportJson(boolean preview, long added, long unchanged, long refused, List<Row> rows, List<Problem> errors) {

    /** One cell that is not right, as in a refused request. */
    @Schema(name = "CellProblem")
    record Problem(String pointer, String field, String value, String message) {
        static Problem of(FieldError error) {
            return new Problem(error.pointer(), error.field(), error.value(), error.sentence());
        }
    }

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
                result.rows().stream().map(ImportJson::row).toList(),
                CsvTable.first(result.errors()).stream().map(Problem::of).toList());
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
