package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpokenCodesTest {
    private static final List<String> CODES = List.of("M-14", "K7M", "W-205", "B-08", "MIKE", "X-RAY", "9-9");

    @ParameterizedTest
    @CsvSource(textBlock = """
            M-14,                               M-14
            m14,                                M-14
            ' m 14 ',                           M-14
            m–14,                               M-14
            M.14,                               M-14
            ml4,                                M-14
            MI4,                                M-14
            mike one four,                      M-14
            Mike dash One Four,                 M-14
            em 14,
            k 7 m,                              K7M
            kilo seven mike,                    K7M
            'Kilo, seven; MIKE',                K7M
            w2o5,                               W-205
            wzos,                               W-205
            whiskey two zero five,              W-205
            whiskey two oh five,                W-205
            bravo zero eight,                   B-08
            BO8,                                B-08
            808,                                B-08
            x ray,                              X-RAY
            niner niner,                        9-9
            Ｋ７Ｍ,                              K7M
            http://192.168.1.20:8417/p/M-14,    M-14
            https://shop.example/p/k7m?x=1,     K7M
            HTTP://SHOP:8417/P/K7M/,            K7M
            """)
    void findsThePieceThatIsMeant(String said, String code) {
        assertThat(SpokenCodes.meant(said, CODES)).isEqualTo(code == null ? List.of() : List.of(code));
    }

    /** A code that is a word of the spelling alphabet is itself before it is a letter. */
    @Test
    void whatIsWrittenBeatsWhatIsSpelled() {
        assertThat(SpokenCodes.meant("mike", List.of("M", "MIKE"))).containsExactly("MIKE");
        assertThat(SpokenCodes.meant("mike", List.of("M"))).containsExactly("M");
    }

    @Test
    void offersEveryPieceThatLooksAlikeOnlyWhereNoneIsWrittenSo() {
        List<String> alike = List.of("M-1O", "M-10", "MI0");
        assertThat(SpokenCodes.meant("M-10", alike)).containsExactly("M-10");
        assertThat(SpokenCodes.meant("m10", alike)).containsExactly("M-10");
        assertThat(SpokenCodes.meant("mlo", alike)).isEqualTo(alike);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "--", "?", "🪵", "%", "http://shop/p/", "\u0000", "$1", "\\"})
    void nothingSaidMeansNothing(String said) {
        assertThat(SpokenCodes.meant(said, CODES)).isEmpty();
    }

    /** Codes the program makes never look alike, so that reading one aloud or badly written finds it alone. */
    @Test
    void everyCodeTheProgramMakesIsFoundHoweverItIsSaid() {
        Random random = new Random(5);
        List<String> codes = new ArrayList<>(PieceCodes.make(2000, 0, c -> false, random));
        for (String code : codes.subList(0, 300)) {
            String spaced =
                    String.join(" ", code.toLowerCase(java.util.Locale.ROOT).split(""));
            assertThat(SpokenCodes.meant(spaced, codes)).containsExactly(code);
            assertThat(SpokenCodes.meant(spaced.replace(' ', '-'), codes)).containsExactly(code);
        }
    }
}
