package org.scarfwright.necks;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scarfwright.measure.MeasureFormatException;

/**
 * An ISO 8601 week, Monday first, written 2026-W49.
 *
 * @param year week-based year
 * @param week 1 to 52 or 53
 */
public record IsoWeek(int year, int week) implements Comparable<IsoWeek> {
    private static final Pattern FORM = Pattern.compile("(\\d{4})-[Ww](\\d{2})");

    public IsoWeek {
        if (year < 1900 || year > 9999) {
            throw new MeasureFormatException("The year " + year + " is not between 1900 and 9999");
        }
        long weeks = IsoFields.WEEK_OF_WEEK_BASED_YEAR
                .rangeRefinedBy(LocalDate.of(year, 7, 1))
                .getMaximum();
        if (week < 1 || week > weeks) {
            throw new MeasureFormatException(
                    "The year " + year + " has no week " + week + "; its weeks run from W01 to W" + weeks);
        }
    }

    /** @throws MeasureFormatException with a sentence that says what would be right */
    public static IsoWeek parse(String text) {
        Matcher m = FORM.matcher(text.strip());
        if (!m.matches()) {
            String shown = text.strip();
            throw new MeasureFormatException("“" + (shown.length() > 40 ? shown.substring(0, 40) + "…" : shown)
                    + "” is not a week; write for example 2026-W49");
        }
        return new IsoWeek(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)));
    }

    public static IsoWeek of(LocalDate day) {
        return new IsoWeek(day.get(IsoFields.WEEK_BASED_YEAR), day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    public LocalDate monday() {
        try {
            return LocalDate.of(year, 1, 4)
                    .with(IsoFields.WEEK_OF_WEEK_BASED_YEAR, week)
                    .with(java.time.DayOfWeek.MONDAY);
        } catch (DateTimeException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public int compareTo(IsoWeek other) {
        return year != other.year ? Integer.compare(year, other.year) : Integer.compare(week, other.week);
    }

    @Override
    public String toString() {
        return year + (week < 10 ? "-W0" : "-W") + week;
    }
}
