package org.scarfwright.web;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A CSV file read into a header and rows of text (RFC 4180, UTF-8; comma, semicolon or tab, whichever the header is written
 * with). What the cells mean is for the room that asked. A file that cannot be read as a table is refused as a whole, with
 * an {@link InvalidInputException} whose pointers are {@code /file}, {@code /header} or {@code /rows/3}.
 *
 * <p>Rows are numbered as a spreadsheet numbers them: the header is row 1, the first row of data is row 2, empty rows count
 * but are left out. Columns are found without regard to case, and {@code neck_length}, {@code Neck length} and
 * {@code neck-length} are the same column.
 */
public final class CsvTable {
    /** The most errors one answer carries; the rest are counted. */
    public static final int MOST_ERRORS = 100;

    private static final String SEPARATORS = ",;\t";
    private static final int LONGEST_HEADER_CELL = 60;
    private static final int LONGEST_HEADER = 10_000;

    private final List<String> header;
    private final List<Row> rows;
    private final char separator;
    private final List<FieldError> errors;

    private CsvTable(List<String> header, List<Row> rows, char separator, List<FieldError> errors) {
        this.header = List.copyOf(header);
        this.rows = List.copyOf(rows);
        this.separator = separator;
        this.errors = List.copyOf(errors);
    }

    /**
     * The columns a room knows, in lower case with {@code _} between words.
     *
     * @param required the header must have these
     * @param optional the header may have these
     */
    public record Columns(List<String> required, List<String> optional) {
        public Columns {
            required = List.copyOf(required);
            optional = List.copyOf(optional);
        }

        boolean knows(String column) {
            return required.contains(column) || optional.contains(column);
        }

        List<String> all() {
            List<String> all = new ArrayList<>(required);
            all.addAll(optional);
            return all;
        }
    }

    /**
     * How much is read at most.
     *
     * @param bytes size of the file
     * @param rows rows of data
     * @param cell characters in one cell
     */
    public record Limits(int bytes, int rows, int cell) {
        /** 32 MB, 200,000 rows, 2,000 characters a cell. */
        public static final Limits USUAL = new Limits(32 * 1024 * 1024, 200_000, 2_000);
    }

    /** One row of data: the text of every column that the header names. */
    public static final class Row {
        private final int number;
        private final Map<String, String> cells;
        private final boolean whole;

        private Row(int number, Map<String, String> cells, boolean whole) {
            this.number = number;
            this.cells = cells;
            this.whole = whole;
        }

        /** False when one of its cells could not be read and stands among the table's errors instead. */
        public boolean isWhole() {
            return whole;
        }

        /** As a spreadsheet numbers it; the header is row 1. */
        public int number() {
            return number;
        }

        /** The text without blanks at its ends; empty when the file has no such column. */
        public String cell(String column) {
            return cells.getOrDefault(column, "");
        }

        public boolean has(String column) {
            return !cell(column).isEmpty();
        }

        /** @param message reads on from the column's name: "is negative; write for example 640" */
        public FieldError error(String column, String message) {
            return error(column, cell(column), message);
        }

        public FieldError error(String column, String value, String message) {
            return new FieldError(pointer() + "/" + column, label(column), value, message);
        }

        /** What is wrong with the row and not with one cell. */
        public FieldError error(String message) {
            return new FieldError(pointer(), "Row " + number, "", message);
        }

        private String pointer() {
            return "/rows/" + number;
        }

        private String label(String column) {
            return "Row " + number + ", " + column.replace('_', ' ');
        }
    }

    /** Reads a file as it was uploaded or sent. */
    public static CsvTable read(byte[] content, Columns columns, Limits limits) {
        return readWithErrors(content, columns, limits).orRefused();
    }

    /** Reads text as it was pasted. */
    public static CsvTable read(String text, Columns columns, Limits limits) {
        return readWithErrors(text, columns, limits).orRefused();
    }

    /** The same for a room that shows what the other rows hold: cells that cannot be read stand in {@link #errors()}. */
    public static CsvTable readWithErrors(byte[] content, Columns columns, Limits limits) {
        if (content.length > limits.bytes()) {
            throw refused(
                    "/file",
                    "File",
                    content.length + " bytes",
                    "is larger than " + limits.bytes() + " bytes; split it into smaller files");
        }
        return readWithErrors(decode(content), columns, limits);
    }

    /** The same for text as it was pasted. */
    public static CsvTable readWithErrors(String text, Columns columns, Limits limits) {
        String content = text.startsWith("\ufeff") ? text.substring(1) : text;
        if (content.length() > limits.bytes()) {
            throw refused(
                    "/file",
                    "File",
                    content.length() + " characters",
                    "is larger than " + limits.bytes() + " bytes; split it into smaller files");
        }
        char named = namedSeparator(content);
        int skipped = 0;
        if (named != 0) {
            int end = endOfLine(content, 0);
            content = content.substring(Math.min(content.length(), end));
            skipped = 1;
        }
        if (content.isBlank()) {
            throw refused(
                    "/file", "File", "", "is empty; its first row names the columns: " + list(columns.required()));
        }
        char separator = named != 0 ? named : detectSeparator(content, columns);
        int open = rowOfUnclosedQuote(content, separator);
        if (open > 0) {
            throw refused(
                    "/rows/" + (open + skipped),
                    "Row " + (open + skipped),
                    "",
                    "opens a quote that is never closed; close it, or write an inch mark as in instead of \"");
        }
        return read(new Source(content, separator, skipped), columns, limits);
    }

    private record Source(String text, char separator, int rowsBefore) {}

    private static CsvTable read(Source source, Columns columns, Limits limits) {
        List<String> names = List.of();
        List<Row> rows = new ArrayList<>();
        List<FieldError> errors = new ArrayList<>();
        int number = source.rowsBefore();
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(source.separator())
                .skipEmptyLines(false)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .maxBufferSize(limits.bytes() + 1024)
                .ofCsvRecord(source.text())) {
            for (CsvRecord csv : reader) {
                number++;
                List<String> fields = csv.getFields();
                if (fields.stream().allMatch(String::isBlank)) {
                    continue;
                }
                if (names.isEmpty()) {
                    names = header(fields, columns, errors);
                    if (!errors.isEmpty()) {
                        throw new InvalidInputException(errors);
                    }
                } else {
                    if (rows.size() == limits.rows()) {
                        throw refused(
                                "/file",
                                "File",
                                "row " + number,
                                "has more than " + limits.rows() + " rows of data; split it into smaller files");
                    }
                    rows.add(row(number, fields, names, limits, errors));
                }
            }
        } catch (CsvParseException e) {
            throw refused("/rows/" + (number + 1), "Row " + (number + 1), "", sentence(e));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new CsvTable(names, rows, source.separator(), errors);
    }

    private CsvTable orRefused() {
        if (!errors.isEmpty()) {
            throw new InvalidInputException(first(errors));
        }
        return this;
    }

    /** Not longer than {@link #MOST_ERRORS}: the first ones, and how many more there are. */
    public static List<FieldError> first(List<FieldError> errors) {
        if (errors.size() <= MOST_ERRORS) {
            return List.copyOf(errors);
        }
        List<FieldError> shown = new ArrayList<>(errors.subList(0, MOST_ERRORS));
        int more = errors.size() - MOST_ERRORS;
        shown.add(new FieldError(
                "/file",
                "File",
                "",
                "has " + more + (more == 1 ? " more error" : " more errors")
                        + "; mend the ones above and read it again"));
        return List.copyOf(shown);
    }

    /** The columns the file has, in its order. */
    public List<String> header() {
        return header;
    }

    public List<Row> rows() {
        return rows;
    }

    /** Cells that could not be read; their rows are not whole. Empty unless the table was read with its errors. */
    public List<FieldError> errors() {
        return errors;
    }

    /** What the file separates its cells with: a comma, a semicolon or a tab. */
    public char separator() {
        return separator;
    }

    /** A column's name as this class compares it: {@code Neck length (mm)} stays different from {@code neck_length}. */
    static String plainName(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "_");
    }

    private static List<String> header(List<String> fields, Columns columns, List<FieldError> errors) {
        List<String> names = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (String field : fields) {
            String name = plainName(field);
            names.add(name);
            if (name.isEmpty()) {
                continue;
            }
            if (!columns.knows(name)) {
                errors.add(new FieldError(
                        "/header",
                        "Header",
                        field,
                        "has the column “" + cut(field.strip()) + "”"
                                + near(name, columns.all())
                                        .map(n -> "; did you mean " + n + "?")
                                        .orElse("; the columns are: " + list(columns.all()))));
            } else if (!seen.add(name)) {
                errors.add(new FieldError(
                        "/header", "Header", field, "has the column “" + name + "” twice; keep one of them"));
            }
        }
        for (String required : columns.required()) {
            if (!seen.contains(required)) {
                errors.add(new FieldError(
                        "/header",
                        "Header",
                        cut(String.join(" ", fields)),
                        "has no column “" + required + "”; the required columns are: " + list(columns.required())));
            }
        }
        return names;
    }

    private static Row row(
            int number, List<String> fields, List<String> names, Limits limits, List<FieldError> errors) {
        Map<String, String> cells = new LinkedHashMap<>();
        Row row = new Row(number, cells, true);
        int before = errors.size();
        for (int i = 0; i < fields.size(); i++) {
            String text = fields.get(i).strip();
            String name = i < names.size() ? names.get(i) : "";
            if (text.isEmpty()) {
                continue;
            }
            if (name.isEmpty()) {
                errors.add(new FieldError(
                        row.pointer(),
                        "Row " + number,
                        text,
                        "has “" + cut(text) + "” in cell " + (i + 1)
                                + ", where the header names no column; put a cell that holds the separator in quotes"));
            } else if (text.length() > limits.cell()) {
                errors.add(row.error(
                        name, text, "is " + text.length() + " characters long; a cell holds at most " + limits.cell()));
            } else if (text.indexOf('\0') >= 0) {
                errors.add(row.error(name, text.replace('\0', '?'), "holds a zero byte; is this a text file?"));
            } else {
                cells.put(name, text);
            }
        }
        return errors.size() == before ? row : new Row(number, cells, false);
    }

    private static String decode(byte[] content) {
        if (startsWith(content, 0xFF, 0xFE) || startsWith(content, 0xFE, 0xFF)) {
            throw refused("/file", "File", "UTF-16", "is written in UTF-16; save it again as CSV UTF-8");
        }
        if (startsWith(content, 'P', 'K', 3, 4)) {
            throw refused(
                    "/file", "File", "a packed workbook", "is a spreadsheet workbook; save the sheet as CSV UTF-8");
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(content);
        try {
            return decoder.decode(in).toString();
        } catch (CharacterCodingException e) {
            throw notUtf8(content, in.position());
        }
    }

    private static InvalidInputException notUtf8(byte[] content, int at) {
        int row = 1;
        for (int i = 0; i < at; i++) {
            if (content[i] == '\n') {
                row++;
            }
        }
        return refused(
                "/file",
                "File",
                "byte " + String.format(Locale.ROOT, "%02X", content[at] & 0xFF) + " in line " + row,
                "is not UTF-8: line " + row + " has a byte that is no UTF-8 character; save it again as CSV UTF-8");
    }

    private static boolean startsWith(byte[] content, int... bytes) {
        if (content.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((content[i] & 0xFF) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    /** Some spreadsheets name the separator in a first line of its own, {@code sep=;}. Zero when the file does not. */
    private static char namedSeparator(String text) {
        boolean named = text.length() >= 5
                && text.regionMatches(true, 0, "sep=", 0, 4)
                && SEPARATORS.indexOf(text.charAt(4)) >= 0
                && (text.length() == 5 || text.charAt(5) == '\n' || text.charAt(5) == '\r');
        return named ? text.charAt(4) : 0;
    }

    private static int endOfLine(String text, int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end + 1;
    }

    /** The separator that makes the most known columns of the first line that is not blank; a comma when none does. */
    private static char detectSeparator(String text, Columns columns) {
        String content = text.stripLeading();
        String line = content.substring(0, Math.min(endOfLine(content, 0), LONGEST_HEADER));
        char best = ',';
        int most = 0;
        for (int i = 0; i < SEPARATORS.length(); i++) {
            char candidate = SEPARATORS.charAt(i);
            int known = 0;
            for (String cell : line.split(String.valueOf(candidate), -1)) {
                known += columns.knows(plainName(cell.strip().replace("\"", ""))) ? 1 : 0;
            }
            if (known > most) {
                most = known;
                best = candidate;
            }
        }
        return best;
    }

    /** The row whose quote is open when the text ends, 0 when every quote is closed. A quote opens only a cell. */
    private static int rowOfUnclosedQuote(String text, char separator) {
        int row = 1;
        boolean quoted = false;
        boolean cellStart = true;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quoted) {
                if (c == '"') {
                    if (i + 1 < text.length() && text.charAt(i + 1) == '"') {
                        i++;
                    } else {
                        quoted = false;
                    }
                }
            } else if (c == '"' && cellStart) {
                quoted = true;
                cellStart = false;
            } else {
                boolean loneReturn = c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n');
                boolean lineEnd = c == '\n' || loneReturn;
                row += lineEnd ? 1 : 0;
                cellStart = c == separator || c == '\n' || c == '\r';
            }
        }
        return quoted ? row : 0;
    }

    private static String sentence(CsvParseException e) {
        @Nullable String why = e.getMessage();
        boolean afterQuote = why != null && why.contains("after closing quote");
        return afterQuote
                ? "has text after a closing quote; write a quote inside a quoted cell twice"
                : "cannot be read as CSV; put cells that hold the separator or a quote in quotes";
    }

    private static InvalidInputException refused(String pointer, String label, String value, String message) {
        return new InvalidInputException(new FieldError(pointer, label, value, message));
    }

    private static String list(List<String> names) {
        return String.join(", ", names);
    }

    private static String cut(String text) {
        return text.length() <= LONGEST_HEADER_CELL ? text : text.substring(0, LONGEST_HEADER_CELL) + "…";
    }

    private static Optional<String> near(String name, List<String> known) {
        return NearWords.of(name, known, 1).stream().findFirst();
    }
}
