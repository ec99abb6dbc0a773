package org.scarfwright.necks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.measure.MeasureFormatException;

class IsoWeekTest {
    /**
     * Days and their weeks as the article “ISO week date” of Wikipedia prints them beside each other (its table of examples of
     * contiguous dates around New Year), quoted from memory; each is checked by the standard's own rule below.
     */
    @ParameterizedTest
    @CsvSource({
        "1977-01-01, 1976-W53",
        "1977-01-02, 1976-W53",
        "1977-12-31, 1977-W52",
        "1978-01-01, 1977-W52",
        "1978-01-02, 1978-W01",
        "1978-12-31, 1978-W52",
        "1979-01-01, 1979-W01",
        "1979-12-30, 1979-W52",
        "1979-12-31, 1980-W01",
        "1980-12-28, 1980-W52",
        "1980-12-29, 1981-W01",
        "1981-12-31, 1981-W53",
        "1982-01-03, 1981-W53",
        "2026-11-30, 2026-W49",
        "2026-12-04, 2026-W49",
        "2026-12-06, 2026-W49",
        "2026-12-07, 2026-W50",
        "2027-01-03, 2026-W53",
        "2027-01-04, 2027-W01"
    })
    void putsADayIntoThePublishedWeek(String day, String week) {
        assertThat(IsoWeek.of(LocalDate.parse(day))).hasToString(week);
    }

    /** ISO 8601-1:2019, 3.1.1.23: week 01 is the one with the year's first Thursday; equivalently the one with 4 January. */
    @Test
    void beginsEveryYearWithTheWeekOfItsFirstThursday() {
        for (int year = 1900; year <= 2400; year++) {
            LocalDate thursday = LocalDate.of(year, 1, 1);
            while (thursday.getDayOfWeek() != DayOfWeek.THURSDAY) {
                thursday = thursday.plusDays(1);
            }
            assertThat(IsoWeek.of(thursday)).isEqualTo(new IsoWeek(year, 1));
            assertThat(new IsoWeek(year, 1).monday()).isEqualTo(thursday.minusDays(3));
        }
    }

    /** A year is long when it begins on a Thursday, or on a Wednesday and is a leap year (follows from the rule above). */
    @Test
    void givesAYear53WeeksExactlyWhenItIsLong() {
        for (int year = 1900; year <= 2400; year++) {
            LocalDate first = LocalDate.of(year, 1, 1);
            boolean isLong = first.getDayOfWeek() == DayOfWeek.THURSDAY
                    || (first.getDayOfWeek() == DayOfWeek.WEDNESDAY && first.isLeapYear());
            String week53 = year + "-W53";
            if (isLong) {
                assertThat(IsoWeek.parse(week53).week()).isEqualTo(53);
            } else {
                assertThatThrownBy(() -> IsoWeek.parse(week53))
                        .isInstanceOf(MeasureFormatException.class)
                        .hasMessageContaining("has no week 53; its weeks run from W01 to W52");
            }
        }
        assertThat(IsoWeek.parse("2026-W53").monday()).isEqualTo(LocalDate.of(2026, 12, 28));
    }

    /** Against the Java library's own ISO_WEEK_DATE, on seeded days, whatever language the machine speaks. */
    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "tr"})
    void agreesWithTheLibraryOnAnyDay(String language) {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag(language));
        try {
            Random random = new Random(49);
            for (int i = 0; i < 2_000; i++) {
                LocalDate day = LocalDate.of(1900, 1, 8).plusDays(random.nextInt(365 * 500));
                IsoWeek week = IsoWeek.of(day);
                assertThat(day.format(DateTimeFormatter.ISO_WEEK_DATE)).startsWith(week + "-");
                assertThat(IsoWeek.parse(week.toString())).isEqualTo(week);
                assertThat(week.monday().getDayOfWeek()).isEqualTo(DayOfWeek.MONDAY);
                assertThat(day).isBetween(week.monday(), week.monday().plusDays(6));
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "49", "2026-49", "2026W49", "2026-W9", "W49-2026", "next week"})
    void refusesWhatIsNoWeekAndSaysHowToWriteOne(String text) {
        assertThatThrownBy(() -> IsoWeek.parse(text))
                .isInstanceOf(MeasureFormatException.class)
                .hasMessageContaining("write for example 2026-W49");
    }

    @Test
    void refusesWeekZeroAndWeek54() {
        assertThatThrownBy(() -> IsoWeek.parse("2026-W00")).hasMessageContaining("has no week 0");
        assertThatThrownBy(() -> IsoWeek.parse("2026-W54")).hasMessageContaining("its weeks run from W01 to W53");
    }
}
