package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvSheetTest {
    /** The characters that OWASP's page on CSV injection lists, from memory. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "\nx", "＝1+1"})
    void textThatCouldBeAFormulaIsNone(String cell) {
        String text = new CsvSheet("a").row(cell).text();
        assertThat(text.substring(3)).matches("(?s)\"?'.*");
    }

    @Test
    void everythingElseStandsAsItIs() {
        assertThat(new CsvSheet("code", "mm3", "of")
                        .row("M-14", new BigDecimal("-12.500"), null)
                        .row("a, \"b\"", 3, "x=1")
                        .text())
                .isEqualTo("code,mm3,of\r\nM-14,-12.500,\r\n\"a, \"\"b\"\"\",3,x=1\r\n");
    }
}
