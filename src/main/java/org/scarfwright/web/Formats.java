package org.scarfwright.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Area;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.springframework.stereotype.Component;

/**
 * How measures are printed on pages: {@code @fmt} in a template. Rounds once, to the nearest, and the same in every locale;
 * what is not known prints as a dash.
 */
@Component("fmt")
public class Formats {
    private static final String NOTHING = "–";
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);
    private static final LengthFormat INCHES = new LengthFormat(LengthUnit.INCH, Locale.ROOT);
    private static final BigDecimal MM_PER_INCH = new BigDecimal("25.4");
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);

    private final ZoneId zone;

    Formats(java.time.Clock clock) {
        zone = clock.getZone();
    }

    /** 640.5 mm. */
    public String mm(@Nullable Length length) {
        return length == null ? NOTHING : MM.print(length);
    }

    /** 640.5 mm; in a shop that works in inches 25 3/8 in (644.5 mm). */
    public String length(@Nullable Length length, LengthUnit unit) {
        return length == null || unit != LengthUnit.INCH ? mm(length) : INCHES.print(length) + " (" + mm(length) + ")";
    }

    /** 1.01 mm; in a shop that works in inches 0.040 in (1.01 mm): gaps and slips. */
    public String fine(@Nullable Length length, LengthUnit unit) {
        if (length == null) {
            return NOTHING;
        }
        String mm = rounded(length.toMm(), 2) + " mm";
        return unit == LengthUnit.INCH
                ? rounded(length.toMm().divide(MM_PER_INCH, 6, RoundingMode.HALF_UP), 3) + " in (" + mm + ")"
                : mm;
    }

    /** 640.5, for a column whose head carries the unit. */
    public String number(@Nullable Length length) {
        return length == null ? NOTHING : MM.number(length);
    }

    /** 12.4, rounded up: what a job lacks. */
    public String shortfall(@Nullable Length length) {
        return length == null
                ? NOTHING
                : length.toMm().setScale(1, RoundingMode.CEILING).toPlainString();
    }

    /** 1413.7 cm³. */
    public String volume(@Nullable Volume volume) {
        return volume == null ? NOTHING : cm3(volume) + " cm³";
    }

    /** 1413.7, for a column whose head carries cm³. */
    public String cm3(@Nullable Volume volume) {
        return volume == null ? NOTHING : rounded(volume.toMm3().movePointLeft(3), 1);
    }

    /** 45.2 litres. */
    public String litres(@Nullable Volume volume) {
        return volume == null ? NOTHING : rounded(volume.toMm3().movePointLeft(6), 1) + " litres";
    }

    /** 51.8 cm². */
    public String area(@Nullable Area area) {
        return area == null ? NOTHING : rounded(area.toMm2().movePointLeft(2), 1) + " cm²";
    }

    /** 63.2 %, from a share between 0 and 1. */
    public String percent(double share) {
        return rounded(BigDecimal.valueOf(share).movePointRight(2), 1) + " %";
    }

    /** 63.2 %, one volume as a share of another. */
    public String share(Volume part, Volume whole) {
        return percent(part.shareOf(whole));
    }

    /** 8.5 %. */
    public String moisture(@Nullable Moisture moisture) {
        return moisture == null ? NOTHING : rounded(moisture.toPercent(), 1) + " %";
    }

    /** 18.50 EUR. */
    public String money(@Nullable Money money, String currency) {
        return money == null ? NOTHING : (money + " " + currency).strip();
    }

    /** 10°, 12.5°. */
    public String angle(@Nullable Angle angle) {
        return angle == null ? NOTHING : angle.toString();
    }

    /** Fri 4 Dec 2026. */
    public String day(@Nullable LocalDate day) {
        return day == null ? NOTHING : DAY.format(day);
    }

    /** Fri 4 Dec. */
    public String shortDay(@Nullable LocalDate day) {
        return day == null ? NOTHING : SHORT_DAY.format(day);
    }

    /** 25 Nov 2026, 14:05, on the shop's clock. */
    public String moment(@Nullable Instant instant) {
        return instant == null ? NOTHING : MOMENT.format(instant.atZone(zone));
    }

    /** 1 neck, 3 necks: a count with its word. */
    public String count(long number, String one, String more) {
        return number + " " + (number == 1 ? one : more);
    }

    /** A decimal number without needless zeros, at most {@code places} of them. */
    public String decimal(@Nullable BigDecimal number, int places) {
        if (number == null) {
            return NOTHING;
        }
        BigDecimal shown = number.setScale(places, RoundingMode.HALF_UP).stripTrailingZeros();
        return shown.signum() == 0 ? "0" : shown.toPlainString();
    }

    private static String rounded(BigDecimal number, int places) {
        return number.setScale(places, RoundingMode.HALF_UP).toPlainString();
    }
}
