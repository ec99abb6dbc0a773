package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The grammar is RFC 4180, Common Format and MIME Type for Comma-Separated Values (CSV) Files, section 2; the numbered cases
 * below are its rules.
 */
class CsvTableTest {
    private static final CsvTable.Columns AAA = new CsvTable.Columns(List.of("aaa", "bbb"), List.of("ccc"));
    private static final CsvTable.Columns WOOD =
            new CsvTable.Columns(List.of("wood", "length"), List.of("neck_length", "note"));

    @Test
    void readsRule1and2LinesWithOrWithoutALastLineBreak() {
        assertThat(cells("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")).isEqualTo(List.of("zzz", "yyy", "xxx"));
        assertThat(cells("aaa,bbb,ccc\r\nzzz,yyy,xxx")).isEqualTo(List.of("zzz", "yyy", "xxx"));
    }

    @Test
    void readsRule6LineBreaksInsideQuotes() {
        assertThat(cells("aaa,bbb,ccc\r\n\"zzz\",\"b \r\nbb\",\"ccc\"\r\n"))
                .isEqualTo(List.of("zzz", "b \r\nbb", "ccc"));
    }

    @Test
    void readsRule7QuotesInsideQuotes() {
        assertThat(cells("aaa,bbb,ccc\r\n\"aaa\",\"b\"\"bb\",\"ccc\"\r\n")).isEqualTo(List.of("aaa", "b\"bb", "ccc"));
    }

    @Test
    void readsAnInchMarkInACellWithoutQuotes() {
        assertThat(wood("wood,length\nmaple,25 3/8\"\n").rows().get(0).cell("length"))
                .isEqualTo("25 3/8\"");
    }

    @Test
    void findsTheSeparatorTheHeaderIsWrittenWith() {
        assertThat(wood("wood;length\nmaple;640,5\n").rows().get(0).cell("length"))
                .isEqualTo("640,5");
        assertThat(wood("wood\tlength\nmaple\t640,5\n").separator()).isEqualTo('\t');
        assertThat(wood("sep=;\nwood;length\nmaple;1,5\n").rows().get(0).number())
                .isEqualTo(3);
    }

    @Test
    void findsColumnsWithoutRegardToCaseAndBlanks() {
        CsvTable table = wood("\ufeffWood, LENGTH ,Neck length\nmaple,640,457\n");
        assertThat(table.header()).containsExactly("wood", "length", "neck_length");
        assertThat(table.rows().get(0).cell("neck_length")).isEqualTo("457");
        assertThat(table.rows().get(0).cell("note")).isEmpty();
    }

    @Test
    void numbersRowsAsASpreadsheetDoes() {
        List<CsvTable.Row> rows = wood("wood,length,note\nmaple,640,\"two\nlines\"\n\n,,\noak,500\n")
                .rows();
        assertThat(rows).extracting(CsvTable.Row::number).containsExactly(2, 5);
        assertThat(rows.get(1).error("length", "is odd").pointer()).isEqualTo("/rows/5/length");
        assertThat(rows.get(1).error("length", "is odd").sentence()).isEqualTo("Row 5, length is odd.");
    }

    @Test
    void namesAnUnknownColumnAndTheOneItMayBe() {
        refuses("wood,lenght\nmaple,640\n", "/header", "has the column “lenght”; did you mean length?");
        refuses("wood,length,colour\n", "/header", "has the column “colour”; the columns are: wood, length, neck");
        refuses("wood,length,length\n", "/header", "has the column “length” twice");
        refuses("wood\nmaple\n", "/header", "has no column “length”");
    }

    @Test
    void refusesAFileThatIsEmptyOrNoText() {
        refuses("", "/file", "is empty; its first row names the columns: wood, length");
        refuses(" \n\n", "/file", "is empty");
        refuses(new byte[] {'P', 'K', 3, 4, 0, 0}, "/file", "is a spreadsheet workbook");
        refuses("wood,length\n".getBytes(StandardCharsets.UTF_16), "/file", "is written in UTF-16");
        refuses(
                "wood,length\nno\u0308yer,640\nnoyer d'Amérique,1".getBytes(StandardCharsets.ISO_8859_1),
                "/file",
                "is not UTF-8: line 3");
    }

    @Test
    void refusesAQuoteThatIsNeverClosed() {
        refuses("wood,length\nmaple,640\n\"oak,500\nash,3\n", "/rows/3", "opens a quote that is never closed");
        refuses("wood,length\n\"oak\" red,500\n", "/rows/2", "quote");
    }

    @Test
    void refusesACellThatIsTooLongAndOneThatHasNoColumn() {
        refuses(
                "wood,length\nmaple," + "9".repeat(5_000_000) + "\n",
                "/rows/2/length",
                "is 5000000 characters long; a cell holds at most 2000");
        refuses("wood,length\nmaple,640,5\n", "/rows/2", "has “5” in cell 3, where the header names no column");
    }

    @Test
    void refusesMoreRowsThanAllowed() {
        CsvTable.Limits two = new CsvTable.Limits(1000, 2, 10);
        assertThat(CsvTable.read("wood,length\na,1\nb,2\n", WOOD, two).rows()).hasSize(2);
        assertThatThrownBy(() -> CsvTable.read("wood,length\na,1\nb,2\nc,3\n", WOOD, two))
                .hasMessageContaining("has more than 2 rows of data");
        assertThatThrownBy(() -> CsvTable.read(new byte[1001], WOOD, two))
                .hasMessageContaining("is larger than 1000 bytes");
    }

    @Test
    void countsTheErrorsItDoesNotShow() {
        List<FieldError> many = java.util.stream.IntStream.range(0, 250)
                .mapToObj(i -> new FieldError("/rows/" + i, "Row " + i, "", "is odd"))
                .toList();
        List<FieldError> shown = CsvTable.first(many);
        assertThat(shown).hasSize(CsvTable.MOST_ERRORS + 1);
        assertThat(shown.get(CsvTable.MOST_ERRORS).message()).startsWith("has 150 more errors");
        assertThat(CsvTable.first(many.subList(0, 3))).hasSize(3);
    }

    /** Wagner and Fischer's measure on the pair used in most textbooks: kitten to sitting is 3. */
    @Test
    void measuresTheTextbookPairOfWords() {
        assertThat(NearWords.distance("kitten", "sitting")).isEqualTo(3);
        assertThat(NearWords.of("walnut", List.of("maple_sugar", "walnut_black"), 3))
                .containsExactly("walnut_black");
        assertThat(NearWords.of("cherry_blak", List.of("cherry_black", "maple_black"), 3))
                .containsExactly("cherry_black");
        assertThat(NearWords.of("zebrano", List.of("maple_sugar", "walnut_black"), 3))
                .isEmpty();
    }

    private static CsvTable wood(String text) {
        return CsvTable.read(text, WOOD, CsvTable.Limits.USUAL);
    }

    private static List<String> cells(String text) {
        CsvTable table = CsvTable.read(text.getBytes(StandardCharsets.UTF_8), AAA, CsvTable.Limits.USUAL);
        CsvTable.Row row = table.rows().get(0);
        return table.header().stream().map(row::cell).toList();
    }

    private static void refuses(String text, String pointer, String message) {
        refuses(text.getBytes(StandardCharsets.UTF_8), pointer, message);
    }

    private static void refuses(byte[] content, String pointer, String message) {
        assertThatThrownBy(() -> CsvTable.read(content, WOOD, CsvTable.Limits.USUAL))
                .isInstanceOfSatisfying(InvalidInputException.class, e -> {
                    assertThat(e.errors().get(0).pointer()).isEqualTo(pointer);
                    assertThat(e.errors().get(0).message()).contains(message);
                    assertThat(e.errors().get(0).value()).hasSizeLessThan(90);
                });
    }
}
