package org.scarfwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The last value that is still taken and the first that is not; order and comparison at equality. The limits are our own. */
class MeasureEdgesTest {
    private static final Length SHORT = new Length(1_000);
    private static final Length LONG = new Length(1_001);

    @Test
    void lengthsCompareByWhatTheyMeasure() {
        assertThat(SHORT.max(LONG)).isEqualTo(LONG);
        assertThat(LONG.max(SHORT)).isEqualTo(LONG);
        assertThat(SHORT.min(LONG)).isEqualTo(SHORT);
        assertThat(LONG.min(SHORT)).isEqualTo(SHORT);
        assertThat(SHORT.max(new Length(1_000))).isSameAs(SHORT);
        assertThat(SHORT.min(new Length(1_000))).isSameAs(SHORT);
        assertThat(LONG.isLongerThan(SHORT)).isTrue();
        assertThat(SHORT.isLongerThan(new Length(1_000))).isFalse();
        assertThat(SHORT.isShorterThan(LONG)).isTrue();
        assertThat(SHORT.isShorterThan(new Length(1_000))).isFalse();
        assertThat(new Length(1).isPositive()).isTrue();
        assertThat(Length.ZERO.isPositive()).isFalse();
        assertThat(new Length(25_400).mm()).isEqualTo(25.4);
    }

    @Test
    void everyMeasureSortsFromSmallToLarge() {
        assertThat(SHORT).isLessThan(LONG);
        assertThat(LONG).isGreaterThan(SHORT);
        assertThat(new Angle(7_000)).isLessThan(new Angle(17_000));
        assertThat(new Angle(17_000)).isGreaterThan(new Angle(7_000));
        assertThat(new Area(1)).isLessThan(new Area(2));
        assertThat(new Area(2)).isGreaterThan(new Area(1));
        assertThat(new Moisture(600)).isLessThan(new Moisture(1_000));
        assertThat(new Moisture(1_000)).isGreaterThan(new Moisture(600));
        assertThat(new MoistureChange(-300)).isLessThan(new MoistureChange(300));
        assertThat(new MoistureChange(300)).isGreaterThan(new MoistureChange(-300));
        assertThat(new Money(1)).isLessThan(new Money(2));
        assertThat(new Money(2)).isGreaterThan(new Money(1));
        assertThat(Volume.ofUm3(1)).isLessThan(Volume.ofUm3(2));
        assertThat(Volume.ofUm3(2)).isGreaterThan(Volume.ofUm3(1));
    }

    @Test
    void volumesKnowTheirSignAndTheirCubicCentimetres() {
        assertThat(Volume.ofUm3(5).signum()).isEqualTo(1);
        assertThat(Volume.ZERO.signum()).isZero();
        assertThat(Volume.ZERO.minus(Volume.ofUm3(5)).signum()).isEqualTo(-1);
        assertThat(Volume.of(Length.ofMm(10), Length.ofMm(10), Length.ofMm(25)).cm3())
                .isEqualTo(2.5);
    }

    @Test
    void onePointIsSingularAndEveryOtherNumberOfPointsIsNot() {
        assertThat(new MoistureChange(100)).hasToString("1 point");
        assertThat(new MoistureChange(250)).hasToString("2.5 points");
        assertThat(new MoistureChange(-100)).hasToString("-1 points");
        assertThat(new MoistureChange(0)).hasToString("0 points");
    }

    @Test
    void theLargestValueIsTakenAndTheNextRefused() {
        assertThat(Moisture.parse("300")).isEqualTo(new Moisture(30_000));
        assertThat(Money.parse("1000000000")).isEqualTo(new Money(100_000_000_000L));
        assertThat(Angle.parse("359.999")).isEqualTo(new Angle(359_999));
        assertThat(Length.nearestMm(1e12)).isEqualTo(new Length(1_000_000_000_000_000L));
        assertThat(Length.nearestMm(-1e12)).isEqualTo(new Length(-1_000_000_000_000_000L));
        assertThatThrownBy(() -> Length.nearestMm(1.000_001e12)).isInstanceOf(ArithmeticException.class);
        assertThat(Length.ofMm(new BigDecimal("9223372036854775.807"))).isEqualTo(new Length(Long.MAX_VALUE));
        assertThatThrownBy(() -> Length.ofMm(new BigDecimal("9223372036854775.808")))
                .isInstanceOf(ArithmeticException.class);
        BigInteger largestRead = BigInteger.ONE.shiftLeft(53).subtract(BigInteger.ONE);
        String readable = new BigDecimal(largestRead, 3).toPlainString();
        assertThat(LengthParser.parse("9007199254.74", LengthUnit.M)).isEqualTo(new Length(9_007_199_254_740_000L));
        assertThat(readable).as("too many digits to be typed in mm").isEqualTo("9007199254740.991");
        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> LengthParser.parse("9007199254.741", LengthUnit.M))
                .withMessage("“9007199254.741” is too large for a length");
    }

    @Test
    void halfOfTheLastDigitRoundsAwayFromZeroAndLessThanHalfIsNothing() {
        assertThat(Length.ofMm(new BigDecimal("0.0005"))).isEqualTo(new Length(1));
        assertThat(Length.ofMm(new BigDecimal("0.00049"))).isEqualTo(Length.ZERO);
        assertThat(Length.ofMm(new BigDecimal("0.00005"))).isEqualTo(Length.ZERO);
        assertThat(Length.upFromMm(20.000_000_002)).isEqualTo(new Length(20_001));
        assertThat(Length.upFromMm(20.000_000_000_5)).isEqualTo(new Length(20_000));
        assertThat(Length.downFromMm(19.999_999_999_5)).isEqualTo(new Length(20_000));
    }

    @Test
    void aTextTooLongToShowIsCutAndNeverInsideACharacter() {
        String forty = "x".repeat(40);
        assertThat(Decimals.quote(forty)).isEqualTo("“" + forty + "”");
        assertThat(Decimals.quote(forty + "y")).isEqualTo("“" + forty + "…”");
        String pair = "\uD83D\uDE00";
        assertThat(Decimals.quote("x".repeat(39) + pair + "tail")).isEqualTo("“" + "x".repeat(39) + "…”");
        assertThat(Decimals.quote("x".repeat(38) + pair + "tail")).isEqualTo("“" + "x".repeat(38) + pair + "…”");
    }

    @Test
    void theLongestTextIsReadAndOneLetterMoreIsRefused() {
        int longest = LengthParser.LONGEST_TEXT;
        String spaced = "640" + " ".repeat(longest - 5) + "mm";

        assertThat(spaced).hasSize(longest);
        assertThat(LengthParser.parse(spaced, LengthUnit.INCH)).isEqualTo(Length.ofMm(640));
        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> LengthParser.parse("640" + " ".repeat(longest - 4) + "mm", LengthUnit.INCH))
                .withMessageContaining("is too long for a length");
        assertThat(LengthParser.parse(" ".repeat(longest) + "640", LengthUnit.MM))
                .isEqualTo(Length.ofMm(640));
    }

    @Test
    void footMarksAreFeetOnlyBehindANumber() {
        for (String feet : List.of("2' 3", "2′ 3", "2'", "2′", "1' 6\"")) {
            assertThatExceptionOfType(MeasureFormatException.class)
                    .isThrownBy(() -> LengthParser.parse(feet, LengthUnit.INCH))
                    .withMessageEndingWith("is in feet; write it in inches, for example 25 3/8 in");
        }
        for (String nothing : List.of("'3", "′3")) {
            assertThatExceptionOfType(MeasureFormatException.class)
                    .isThrownBy(() -> LengthParser.parse(nothing, LengthUnit.INCH))
                    .withMessageContaining("is not a number");
        }
    }

    @Test
    void aFractionOfOneOrMoreIsTakenAloneAndRefusedBehindWholeInches() {
        assertThat(LengthParser.parse("4/4", LengthUnit.INCH)).isEqualTo(new Length(25_400));
        assertThat(LengthParser.parse("25 1/2", LengthUnit.INCH)).isEqualTo(new Length(647_700));
        assertThat(LengthParser.parse("1/128", LengthUnit.INCH)).isEqualTo(new Length(198));
        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> LengthParser.parse("25 4/4", LengthUnit.INCH))
                .withMessage("“25 4/4” has a fraction of one or more; write for example 25 3/8 in");
        assertThatExceptionOfType(MeasureFormatException.class)
                .isThrownBy(() -> LengthParser.parse("25 0/1", LengthUnit.INCH))
                .withMessageContaining("is not a fraction of an inch rule");
    }

    @Test
    void inchesArePrintedAsARuleShowsThem() {
        LengthFormat inches = new LengthFormat(LengthUnit.INCH, Locale.ENGLISH);

        assertThat(inches.print(new Length(0))).isEqualTo("0 in");
        assertThat(inches.print(new Length(-25_400))).isEqualTo("-1 in");
        assertThat(inches.print(new Length(-100)))
                .as("less than half of 1/64 in has no sign")
                .isEqualTo("0 in");
        assertThat(inches.print(new Length(397))).isEqualTo("1/64 in");
    }

    @Test
    void theUnitOfTheFieldStaysWithABareNumberOnly() {
        assertThat(TypedLength.parse("640", LengthUnit.MM).typed()).isEqualTo("640 mm");
        assertThat(TypedLength.parse("3/4", LengthUnit.INCH).typed()).isEqualTo("3/4");
        assertThat(TypedLength.parse("64 cm", LengthUnit.MM).typed()).isEqualTo("64 cm");
        assertThat(TypedLength.of(new Length(640_500)).typed()).isEqualTo("640.5 mm");
    }
}
