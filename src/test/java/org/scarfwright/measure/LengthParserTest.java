package org.scarfwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One inch is exactly 25.4 mm (international yard and pound agreement, 1959); every expected length follows from that. */
class LengthParserTest {
    private static final Locale MACHINE = Locale.getDefault();

    @AfterEach
    void putTheMachinesLocaleBack() {
        Locale.setDefault(MACHINE);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "640|640000",
                "640.5|640500",
                "640,5|640500",
                " 640 |640000",
                "0640|640000",
                ".5|500",
                ",5|500",
                "0|0",
                "0,125|125",
                "640 mm|640000",
                "640mm|640000",
                "640 MM|640000",
                "64 cm|640000",
                "64,05 cm|640500",
                "0.64 m|640000",
                "1 M|1000000",
                "25 in|635000",
                "25 IN|635000",
                "25 inch|635000",
                "25 Inches|635000",
                "25 in.|635000",
                "1.5 in|38100",
                "1,5 in|38100",
                "25\"|635000",
                "25″|635000",
                "25”|635000",
                "25''|635000",
                "25 3/8 in|644525",
                "25 3/8|644525",
                "25-3/8\"|644525",
                "25 - 3/8 in|644525",
                "25 3 / 8 in|644525",
                "25⅜|644525",
                "25 ⅜ in|644525",
                "25½\"|647700",
                "3/8|9525",
                "⅜\"|9525",
                "1/2 in|12700",
                "1/64 in|397",
                "1/128 in|198",
                "0/8 in|0",
                "640\u00a0mm|640000",
                "25\u202f3/8\u00a0in|644525",
                "0.0004|0",
                "0.0005|1",
                "3 km|3000000000",
                "0.001 KM|1000000",
            })
    void readsLengthsAsPeopleWriteThem(String text, long um) {
        assertThat(LengthParser.parse(text, LengthUnit.MM)).isEqualTo(new Length(um));
    }

    @Test
    void aBareNumberHasTheUnitOfItsField() {
        assertThat(LengthParser.parse("25", LengthUnit.INCH)).isEqualTo(new Length(635_000));
        assertThat(LengthParser.parse("25", LengthUnit.CM)).isEqualTo(new Length(250_000));
        assertThat(LengthParser.parse("25 mm", LengthUnit.INCH)).isEqualTo(new Length(25_000));
        assertThat(LengthParser.parse("2 3/8", LengthUnit.CM))
                .as("nobody writes centimetres in eighths")
                .isEqualTo(new Length(60_325));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "25 38|“25 38” can be read two ways; write 2538, or a fraction such as 25 3/8 in",
                "25 38 in|“25 38 in” can be read two ways; write 2538, or a fraction such as 25 3/8 in",
                "1 000|“1 000” can be read two ways; write 1000, or a fraction such as 1 3/8 in",
                "1,234|“1,234” can be read two ways; write 1234 or 1.234",
                "12,345 mm|“12,345” can be read two ways; write 12345 or 12.345",
                "`  `|is empty; write for example 640, 64 cm or 25 3/8 in",
                "abc|“abc” is not a length; write for example 640, 64 cm or 25 3/8 in",
                "mm|“mm” is not a length; write for example 640, 64 cm or 25 3/8 in",
                "\"|“\"” is not a length; write for example 640, 64 cm or 25 3/8 in",
                "-5|“-5” is negative; write for example 640, 64 cm or 25 3/8 in",
                "−5 mm|“−5” is negative; write for example 640, 64 cm or 25 3/8 in",
                "-3/8 in|“-3/8” is negative; write for example 640, 64 cm or 25 3/8 in",
                "640 kg|“640 kg” has the unit “kg”; use mm, cm, m or in",
                "5 ft|“5 ft” is in feet; write it in inches, for example 25 3/8 in",
                "5'|“5'” is in feet; write it in inches, for example 25 3/8 in",
                "5' 3\"|“5' 3\"” is in feet; write it in inches, for example 25 3/8 in",
                "3/8 mm|“3/8 mm” is a fraction in mm; write fractions in inches or a decimal, for example 25.4 mm",
                "1/3 in|“1/3 in” is not a fraction of an inch rule; use halves, quarters … 64ths, for example 25 3/8 in",
                "1/0 in|“1/0 in” is not a fraction of an inch rule; use halves, quarters … 64ths, for example 25 3/8 in",
                "25 9/8 in|“25 9/8 in” has a fraction of one or more; write for example 25 3/8 in",
                "640 mm mm|“640 mm” is not a number; write for example 640, 64 cm or 25 3/8 in",
                "1e5|“1e5” is not a number; write for example 640, 64 cm or 25 3/8 in",
                "6.4.0|“6.4.0” is not a number; write for example 640, 64 cm or 25 3/8 in",
                "640.|“640.” is not a number; write for example 640, 64 cm or 25 3/8 in",
                "٦٤٠|“٦٤٠” is not a number; write for example 640, 64 cm or 25 3/8 in",
                "NaN|“NaN” is not a length; write for example 640, 64 cm or 25 3/8 in",
                "9999999999999|“9999999999999” is not a number; write for example 640, 64 cm or 25 3/8 in",
                "999999999999 km|“999999999999 km” is too large for a length",
            })
    void refusesWithASentenceThatSaysWhatWouldBeRight(String text, String sentence) {
        refuses(text, sentence);
    }

    @Test
    void everySixtyFourthOfAnInchComesBackAsItWasWritten() {
        LengthFormat format = new LengthFormat(LengthUnit.INCH, Locale.ROOT);
        for (int n = 0; n <= 64 * 100; n++) {
            String typed = n < 64 ? n + "/64 in" : n / 64 + " " + n % 64 + "/64 in";
            Length length = LengthParser.parse(typed, LengthUnit.MM);
            // n/64 in = n · 396.875 µm; the nearest whole micrometre is never more than half away.
            assertThat(Math.abs(length.um() * 8 - n * 3175L)).isLessThanOrEqualTo(4);
            assertThat(LengthParser.parse(format.print(length), LengthUnit.MM)).isEqualTo(length);
        }
    }

    @Test
    void whatIsPrintedCanBeTypedAgainUnderEveryLocale() {
        for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN, Locale.forLanguageTag("tr"))) {
            Locale.setDefault(locale);
            SplittableRandom random = new SplittableRandom(64);
            for (int i = 0; i < 2_000; i++) {
                Length tenths = new Length(random.nextLong(0, 60_000) * 100);
                Length sixtyFourths =
                        LengthParser.parse(random.nextInt(1, 240) + " " + random.nextInt(64) + "/64 in", LengthUnit.MM);

                assertThat(LengthParser.parse(LengthFormat.mm(locale).print(tenths), LengthUnit.INCH))
                        .isEqualTo(tenths);
                assertThat(LengthParser.parse(LengthFormat.mm(locale).number(tenths), LengthUnit.MM))
                        .isEqualTo(tenths);
                assertThat(LengthParser.parse(
                                new LengthFormat(LengthUnit.INCH, locale).print(sixtyFourths), LengthUnit.MM))
                        .isEqualTo(sixtyFourths);
                assertThat(LengthParser.parse(tenths.toString(), LengthUnit.INCH))
                        .isEqualTo(tenths);
            }
        }
    }

    @Test
    void printsTheLocalesDecimalMarkAndNeverGroups() {
        Length length = new Length(1_234_567);

        assertThat(LengthFormat.mm(Locale.ENGLISH).print(length)).isEqualTo("1234.6 mm");
        assertThat(LengthFormat.mm(Locale.GERMAN).print(length)).isEqualTo("1234,6 mm");
        assertThat(LengthFormat.mm(Locale.forLanguageTag("tr")).print(length)).isEqualTo("1234,6 mm");
        assertThat(new LengthFormat(LengthUnit.INCH, Locale.GERMAN).print(new Length(644_525)))
                .isEqualTo("25 3/8 in");
        assertThat(new LengthFormat(LengthUnit.INCH, Locale.ROOT).print(new Length(-9_525)))
                .isEqualTo("-3/8 in");
        assertThat(LengthFormat.mm(Locale.ROOT).print(new Length(-40))).isEqualTo("0.0 mm");
    }

    @Test
    void readsUnitsInCapitalsUnderATurkishLocale() {
        // In Turkish a capital I is not the capital of i; units must not follow the machine's language.
        Locale.setDefault(Locale.forLanguageTag("tr"));

        assertThat(LengthParser.parse("25 IN", LengthUnit.MM)).isEqualTo(new Length(635_000));
        assertThat(LengthParser.parse("25 INCHES", LengthUnit.MM)).isEqualTo(new Length(635_000));
    }

    @Test
    void keepsWhatWasTypedBesideTheLength() {
        TypedLength typed = TypedLength.parse(" 25 3/8 ", LengthUnit.MM);

        assertThat(typed.typed()).isEqualTo("25 3/8");
        assertThat(typed.length()).isEqualTo(new Length(644_525));
        assertThat(TypedLength.parse("640,5", LengthUnit.MM).typed()).isEqualTo("640,5 mm");
        assertThat(TypedLength.parse("25", LengthUnit.INCH).typed()).isEqualTo("25 in");
        assertThat(TypedLength.parse("64 cm", LengthUnit.MM).typed()).isEqualTo("64 cm");
        for (String text : List.of("25 3/8", "640,5", "25½", "64 cm", "25-3/8\"", ".5")) {
            TypedLength once = TypedLength.parse(text, LengthUnit.INCH);
            assertThat(TypedLength.parse(once.typed(), LengthUnit.MM))
                    .as("the text stands alone")
                    .isEqualTo(once);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"9", " ", "25 ", "3/", "-", "½", "a", "🪵", "1,", "\"", "mm "})
    void aHugeCellIsAnsweredShortlyAndSoon(String part) {
        String text = "x" + part.repeat(5_000_000 / part.length());
        Instant start = Instant.now();

        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> LengthParser.parse(text, LengthUnit.MM))
                .satisfies(e -> assertThat(e.getMessage()).hasSizeLessThan(150));
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(10));
    }

    @Test
    @Tag("long")
    void noShortTextTakesLong() {
        SplittableRandom random = new SplittableRandom(60);
        String alphabet = "0123456789 .,/-'\"½⅜mcinµ\u00a0";
        Instant start = Instant.now();
        int read = 0;
        for (int i = 0; i < 100_000; i++) {
            StringBuilder text = new StringBuilder();
            int length = random.nextInt(0, 61);
            for (int c = 0; c < length; c++) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            try {
                assertThat(LengthParser.parse(text.toString(), LengthUnit.MM).um())
                        .isNotNegative();
                read++;
            } catch (MeasureFormatException e) {
                assertThat(e.getMessage()).isNotBlank().hasSizeLessThan(250);
            }
        }
        assertThat(read).as("some random texts are lengths").isPositive();
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(30));
    }

    private static void refuses(String text, String sentence) {
        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> LengthParser.parse(text, LengthUnit.MM))
                .withMessage(sentence);
    }
}
