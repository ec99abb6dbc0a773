package org.scarfwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Exactness is checked against {@link BigDecimal} and {@link BigInteger}; trigonometry against the angles of known triangles. */
class MeasuresTest {

    @Test
    void readsAnglesAsPeopleWriteThem() {
        assertThat(Angle.parse("10")).isEqualTo(Angle.ofDegrees(10));
        assertThat(Angle.parse("10.5")).isEqualTo(new Angle(10_500));
        assertThat(Angle.parse(" 10,5 ° ")).isEqualTo(new Angle(10_500));
        assertThat(Angle.parse("0.0005")).isEqualTo(new Angle(1));
        assertThat(Angle.parse("13").toString()).isEqualTo("13°");
        refuses(Angle::parse, "", "is empty; write for example 10 or 12.5");
        refuses(Angle::parse, "°", "is empty; write for example 10 or 12.5");
        refuses(Angle::parse, "ten", "“ten” is not a number; write for example 10 or 12.5");
        refuses(Angle::parse, "-10", "“-10” is negative; write for example 10 or 12.5");
        refuses(Angle::parse, "360", "“360” is not an angle in degrees; write for example 10 or 12.5");
        refuses(Angle::parse, "1,234", "“1,234” can be read two ways; write 1234 or 1.234");
    }

    @Test
    void anglesKnowTheTrianglesOfGeometry() {
        assertThat(Angle.ofDegrees(30).sin()).isCloseTo(0.5, within());
        assertThat(Angle.ofDegrees(45).tan()).isCloseTo(1, within());
        assertThat(Angle.ofDegrees(60).cot()).isCloseTo(1 / Math.sqrt(3), within());
    }

    @Test
    void readsMoistureAsPeopleWriteIt() {
        assertThat(Moisture.parse("8")).isEqualTo(new Moisture(800));
        assertThat(Moisture.parse("8,5 %")).isEqualTo(new Moisture(850));
        assertThat(Moisture.parse("8.5%")).isEqualTo(new Moisture(850));
        assertThat(Moisture.parse("8.505")).isEqualTo(new Moisture(851));
        refuses(Moisture::parse, "", "is empty; write for example 8 or 8.5");
        refuses(Moisture::parse, "wet", "“wet” is not a number; write for example 8 or 8.5");
        refuses(Moisture::parse, "301", "“301” is not a moisture content in percent; write for example 8.5");
        refuses(Moisture::parse, "-1", "“-1” is negative; write for example 8 or 8.5");
        assertThat(new Moisture(1000).minus(new Moisture(700)).points()).isEqualTo(3.0);
        assertThat(new Moisture(700).minus(new Moisture(1000)))
                .isEqualTo(new MoistureChange(-300))
                .satisfies(c -> assertThat(c.abs()).isEqualTo(new MoistureChange(300)));
    }

    @Test
    void readsMoneyAsPeopleWriteIt() {
        assertThat(Money.parse("18")).isEqualTo(new Money(1800));
        assertThat(Money.parse("18,5")).isEqualTo(new Money(1850));
        assertThat(Money.parse("18.50").toString()).isEqualTo("18.50");
        refuses(Money::parse, "", "is empty; write for example 18 or 18.50");
        refuses(Money::parse, "18 EUR", "“18 EUR” is not a number; write for example 18 or 18.50");
        refuses(Money::parse, "1000000001", "“1000000001” is too large; write for example 18.50");
        refuses(Money::parse, "-2", "“-2” is negative; write for example 18 or 18.50");
    }

    @Test
    void printingDoesNotDependOnTheMachinesLanguage() {
        Locale machine = Locale.getDefault();
        try {
            for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN, Locale.forLanguageTag("tr"))) {
                Locale.setDefault(locale);
                assertThat(new Length(640_500).toString()).isEqualTo("640.5 mm");
                assertThat(new Angle(12_500).toString()).isEqualTo("12.5°");
                assertThat(new Moisture(850).toString()).isEqualTo("8.5 %");
                assertThat(new Money(1850).toString()).isEqualTo("18.50");
                assertThat(Angle.parse(new Angle(12_345).toString())).isEqualTo(new Angle(12_345));
                assertThat(Moisture.parse(new Moisture(1_234).toString())).isEqualTo(new Moisture(1_234));
                assertThat(Money.parse(new Money(123_456).toString())).isEqualTo(new Money(123_456));
            }
        } finally {
            Locale.setDefault(machine);
        }
    }

    @Test
    void needsRoundUpOffersRoundDownAndWholeMicrometresStay() {
        assertThat(Length.upFromMm(20.0001)).isEqualTo(new Length(20_001));
        assertThat(Length.downFromMm(20.0009)).isEqualTo(new Length(20_000));
        assertThat(Length.upFromMm(0.1 + 0.2))
                .as("the last bits of a double are no micrometre")
                .isEqualTo(new Length(300));
        assertThat(Length.downFromMm(0.1 * 3 - 1e-13)).isEqualTo(new Length(300));
        assertThat(Length.nearestMm(-0.0006)).isEqualTo(new Length(-1));
        assertThat(Length.upFromMm(-0.0006)).isEqualTo(new Length(0));
        assertThatThrownBy(() -> Length.upFromMm(Double.NaN)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Length.nearestMm(Double.POSITIVE_INFINITY)).isInstanceOf(ArithmeticException.class);
        assertThat(new Length(5).halfUp()).isEqualTo(new Length(3));
    }

    @Test
    void lengthsThatOverflowAreRefusedNotWrapped() {
        Length longest = new Length(Long.MAX_VALUE);

        assertThatThrownBy(() -> longest.plus(new Length(1))).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> longest.times(2)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Length.ofMm(Long.MAX_VALUE)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Area.of(longest, longest)).isInstanceOf(ArithmeticException.class);
    }

    @Test
    void aNumberWithAHugeExponentIsRefusedAtOnce() {
        Instant start = Instant.now();

        for (String huge : List.of("1E+999999999", "9E+2000000000", "1E+30")) {
            assertThatThrownBy(() -> Length.ofMm(new BigDecimal(huge))).isInstanceOf(ArithmeticException.class);
            assertThatThrownBy(() -> Angle.ofDegrees(new BigDecimal(huge))).isInstanceOf(ArithmeticException.class);
            assertThatThrownBy(() -> Moisture.ofPercent(new BigDecimal(huge))).isInstanceOf(ArithmeticException.class);
        }
        assertThat(Length.ofMm(new BigDecimal("1E-999999999"))).isEqualTo(Length.ZERO);
        assertThat(Length.ofMm(new BigDecimal("0E+999999999"))).isEqualTo(Length.ZERO);
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(10));
    }

    @Test
    void volumesAndAreasAreExact() {
        SplittableRandom random = new SplittableRandom(9);
        BigInteger sum = BigInteger.ZERO;
        Volume total = Volume.ZERO;
        for (int i = 0; i < 10_000; i++) {
            Length a = new Length(random.nextLong(1, 6_000_000));
            Length b = new Length(random.nextLong(1, 1_200_000));
            Length c = new Length(random.nextLong(1, 300_000));
            BigDecimal mm3 = a.toMm().multiply(b.toMm()).multiply(c.toMm());
            Volume v = Volume.of(a, b, c);

            assertThat(v.toMm3()).isEqualByComparingTo(mm3);
            assertThat(v.halfDown().plus(v.minus(v.halfDown()))).isEqualTo(v);
            assertThat(Area.of(a, b).toMm2()).isEqualByComparingTo(a.toMm().multiply(b.toMm()));
            total = total.plus(v);
            sum = sum.add(mm3.movePointRight(9).toBigIntegerExact());
        }
        assertThat(total.um3()).isEqualTo(sum).isGreaterThan(BigInteger.valueOf(Long.MAX_VALUE));
        assertThat(total.minus(total).isZero()).isTrue();
        assertThat(Volume.ofUm3(1).shareOf(Volume.ZERO)).isZero();
        assertThat(Volume.ofUm3(1).shareOf(Volume.ofUm3(4))).isEqualTo(0.25);
    }

    private static void refuses(Function<String, ?> parser, String text, String sentence) {
        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> parser.apply(text))
                .withMessage(sentence);
    }

    private static Offset<Double> within() {
        return Offset.offset(1e-12);
    }
}
