package org.scarfwright.published;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.assertj.core.data.Offset;

/** A table of {@code src/test/resources/published}: a citation in the first line, then names of columns, then rows. */
public final class PublishedTable {
    private PublishedTable() {}

    /** Every row; never none, so that no check can pass by looking at nothing. */
    public static List<NamedCsvRecord> rows(String file) {
        try (Reader in = new InputStreamReader(
                        Objects.requireNonNull(
                                PublishedTable.class.getResourceAsStream("/published/" + file), "no table " + file),
                        StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder()
                        .commentStrategy(CommentStrategy.SKIP)
                        .ofNamedCsvRecord(in)) {
            List<NamedCsvRecord> rows = csv.stream().toList();
            if (rows.isEmpty()) {
                throw new IllegalStateException("no rows in " + file);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static double number(NamedCsvRecord row, String column) {
        return Double.parseDouble(row.getField(column));
    }

    /** Half a unit of the last printed digit, and what a double cannot tell. */
    public static Offset<Double> tolerance(NamedCsvRecord row, String column) {
        BigDecimal printed = new BigDecimal(row.getField(column));
        return Offset.offset(printed.ulp().doubleValue() / 2 * (1 + 1e-9));
    }
}
