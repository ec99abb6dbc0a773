package org.scarfwright.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;

/**
 * A table written as CSV (RFC 4180, UTF-8, commas, CRLF) for spreadsheets and programs.
 *
 * <p>A cell of text that a spreadsheet would take for a formula, because it begins with = + - @, a tab or a line's end, gets an
 * apostrophe in front. Numbers are written as they are. <b>Source:</b> OWASP, CSV Injection, from memory.
 */
public final class CsvSheet {
    private static final String FORMULAS = "=+-@\t\r\n＝＋－＠";

    private final Writer text;
    private final CsvWriter writer;

    public CsvSheet(String... header) {
        this(new StringWriter(), header);
    }

    private CsvSheet(Writer to, String... header) {
        text = to;
        writer = CsvWriter.builder().build(to);
        writer.writeRecord(header);
    }

    /**
     * A file too long to be held, sent while it is written; {@link #text()} has nothing to say of it. {@link #end()} is called when
     * all is written, and it is never closed: what fails before that leaves an answer without an end, which nobody takes for
     * the whole.
     *
     * @param name of the file
     * @throws IOException when the reader is gone
     */
    public static CsvSheet sent(HttpServletResponse response, String name, String... header) throws IOException {
        response.setContentType("text/csv;charset=UTF-8");
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
        return new CsvSheet(new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8), header);
    }

    /** A row: numbers, and everything else as text; what is not known is an empty cell. */
    public CsvSheet row(@Nullable Object... cells) {
        List<String> row = new ArrayList<>();
        for (Object cell : cells) {
            row.add(
                    cell == null
                            ? ""
                            : cell instanceof BigDecimal number
                                    ? number.toPlainString()
                                    : cell instanceof Number number ? number.toString() : harmless(cell.toString()));
        }
        writer.writeRecord(row);
        return this;
    }

    static String harmless(String cell) {
        return !cell.isEmpty() && FORMULAS.indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }

    /**
     * Sends what is not sent yet.
     *
     * @throws IOException when the reader is gone
     */
    public void end() throws IOException {
        writer.flush();
    }

    /** All of it. */
    public String text() {
        try {
            writer.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
