package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Area;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

class FormatsTest {
    private static final Locale USUAL = Locale.getDefault();

    private final Formats fmt = new Formats(Clock.fixed(Instant.EPOCH, ZoneId.of("Europe/Berlin")));

    @AfterEach
    void usualLocale() {
        Locale.setDefault(USUAL);
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "tr", "ar"})
    void printsTheSameUnderEveryLocale(String language) {
        Locale.setDefault(Locale.forLanguageTag(language));
        assertThat(fmt.mm(Length.ofUm(640_449))).isEqualTo("640.4 mm");
        assertThat(fmt.number(Length.ofUm(-27_040))).isEqualTo("-27.0");
        assertThat(fmt.shortfall(Length.ofUm(34_610)))
                .as("what a job lacks rounds up")
                .isEqualTo("34.7");
        assertThat(fmt.length(Length.ofUm(644_525), LengthUnit.MM)).isEqualTo("644.5 mm");
        assertThat(fmt.length(Length.ofUm(644_525), LengthUnit.INCH)).isEqualTo("25 3/8 in (644.5 mm)");
        assertThat(fmt.fine(Length.ofUm(1_005), LengthUnit.CM)).isEqualTo("1.01 mm");
        assertThat(fmt.fine(Length.ofUm(1_016), LengthUnit.INCH)).isEqualTo("0.040 in (1.02 mm)");
        assertThat(fmt.volume(Volume.of(Length.ofMm(700), Length.ofMm(80), Length.ofMm(25))))
                .isEqualTo("1400.0 cm³");
        assertThat(fmt.litres(Volume.of(Length.ofMm(700), Length.ofMm(80), Length.ofMm(25))))
                .isEqualTo("1.4 litres");
        assertThat(fmt.area(Area.of(Length.ofUm(86_382), Length.ofMm(60)))).isEqualTo("51.8 cm²");
        assertThat(fmt.percent(0.6415)).isEqualTo("64.2 %");
        assertThat(fmt.money(new Money(1850), "EUR")).isEqualTo("18.50 EUR");
        assertThat(fmt.angle(Angle.ofDegrees(new BigDecimal("12.5")))).isEqualTo("12.5°");
        assertThat(fmt.day(LocalDate.of(2026, 12, 4))).isEqualTo("Fri 4 Dec 2026");
        assertThat(fmt.moment(Instant.parse("2026-11-25T13:05:00Z"))).isEqualTo("25 Nov 2026, 14:05");
        assertThat(fmt.decimal(new BigDecimal("3.100"), 2)).isEqualTo("3.1");
        assertThat(fmt.count(1, "neck", "necks")).isEqualTo("1 neck");
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void printsADashForWhatNobodyKnows(String language) {
        Locale.setDefault(Locale.forLanguageTag(language));
        assertThat(fmt.mm(null)).isEqualTo("–");
        assertThat(fmt.length(null, LengthUnit.INCH)).isEqualTo("–");
        assertThat(fmt.fine(null, LengthUnit.INCH)).isEqualTo("–");
        assertThat(fmt.moisture(null)).isEqualTo("–");
        assertThat(fmt.money(null, "EUR")).isEqualTo("–");
        assertThat(fmt.day(null)).isEqualTo("–");
    }
}
