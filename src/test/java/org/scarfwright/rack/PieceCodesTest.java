package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.Collator;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PieceCodesTest {
    @Test
    void madeCodesHoldNoTwoSignsThatLookAlike() {
        String all = String.join("", PieceCodes.make(5000, 0, c -> false, new Random(1)));
        for (String alike : List.of("O0QD".replace("D", ""), "I1L", "S5", "Z2", "B8", "G6", "UV", "AEIOU")) {
            assertThat(alike.chars().filter(c -> all.indexOf(c) >= 0).count())
                    .as("signs of %s", alike)
                    .isZero();
        }
    }

    @Test
    void madeCodesAreShortUntilTheRackIsLarge() {
        assertThat(PieceCodes.make(1, 0, c -> false, new Random(1)).get(0)).hasSize(3);
        assertThat(PieceCodes.make(1, 5_000, c -> false, new Random(1)).get(0)).hasSize(4);
        assertThat(PieceCodes.make(1, 200_000, c -> false, new Random(1)).get(0))
                .hasSize(5);
    }

    @Test
    void madeCodesDifferFromEachOtherAndFromThoseThatAreTaken() {
        Set<String> taken = new HashSet<>(PieceCodes.make(400, 0, c -> false, new Random(7)));
        List<String> made = PieceCodes.make(400, 400, taken::contains, new Random(7));
        assertThat(made).doesNotHaveDuplicates().doesNotContainAnyElementsOf(taken);
    }

    @ParameterizedTest
    @ValueSource(strings = {"M-14", "a", "123456789012", " k7 ", "-x"})
    void takesLettersDigitsAndHyphens(String code) {
        assertThat(PieceCodes.refusal(code)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", "---", "1234567890123", "a b", "Ä1", "ß", "a/b", "new", "Import", "٣", "a\nb"})
    void refusesAnythingElse(String code) {
        assertThat(PieceCodes.refusal(code)).isPresent();
    }

    @Test
    void codeIsTheSameInATurkishShop() {
        java.util.Locale before = java.util.Locale.getDefault();
        try {
            java.util.Locale.setDefault(java.util.Locale.forLanguageTag("tr"));
            assertThat(PieceCodes.written("mi-1")).isEqualTo("MI-1");
        } finally {
            java.util.Locale.setDefault(before);
        }
    }

    /** {@link java.text.Collator} passes over hyphens as many a database does, and is a general library for that order. */
    @Test
    void orderIsTheSameByTheRulesOfALanguageAndBySigns() {
        Collator english = Collator.getInstance(Locale.ENGLISH);
        Random random = new Random(20_261_130);
        List<String> codes = new ArrayList<>(List.of("M-14", "M1-3", "M-1", "M1", "M0", "M-0", "M-"));
        for (int i = 0; i < 2000; i++) {
            StringBuilder code = new StringBuilder();
            for (int n = 1 + random.nextInt(12); n > 0; n--) {
                code.append("-0123456789ABCZ".charAt(random.nextInt(15)));
            }
            codes.add(code.toString());
        }
        List<String> bySign = codes.stream().sorted().toList();
        assertThat(codes.stream().sorted(english).toList()).isNotEqualTo(bySign);
        assertThat(codes.stream()
                        .sorted((a, b) -> english.compare(PieceCodes.order(a), PieceCodes.order(b)))
                        .toList())
                .isEqualTo(bySign);
    }

    @Test
    void orderOfTheLongestCodeFitsItsColumn() {
        assertThat(PieceCodes.order("-0-0-0-0-0-0")).hasSize(24).isEqualTo("000100010001000100010001");
    }
}
