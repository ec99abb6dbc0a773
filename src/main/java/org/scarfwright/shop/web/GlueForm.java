package org.scarfwright.shop.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.shop.web.Entries.Range;

/** A glue as text. */
record GlueForm(
        @Nullable String version,
        @Nullable String code,
        @Nullable String name,
        @Nullable String clampHours,
        @Nullable String cureHours,
        @Nullable String lowestCelsius,
        @Nullable String openMinutes) {
    static final List<String> KEYS = List.of("code", "name", "clampHours", "cureHours", "lowestCelsius", "openMinutes");

    /** The address of the page that adds a glue; no glue can be called so. */
    static final String NEW = "new";

    private static final Pattern CODE = Pattern.compile("[a-z0-9][a-z0-9-]{0,19}");
    private static final int LONGEST_NAME = 80;
    private static final BigDecimal MINUTES_OF_HOUR = BigDecimal.valueOf(60);

    GlueForm {
        version = text(version);
        code = text(code);
        name = text(name);
        clampHours = text(clampHours);
        cureHours = text(cureHours);
        lowestCelsius = text(lowestCelsius);
        openMinutes = text(openMinutes);
    }

    static GlueForm empty() {
        return new GlueForm("", "", "", "", "", "", "");
    }

    static GlueForm of(long version, Glue g) {
        return new GlueForm(
                Long.toString(version),
                g.code(),
                g.name(),
                hours(g.clamp()),
                hours(g.cure()),
                Entries.number(g.lowestCelsius()),
                Integer.toString(g.openMinutes()));
    }

    static GlueForm of(JsonTexts json) {
        return new GlueForm(
                "",
                json.text("code"),
                json.text("name"),
                json.text("clampHours"),
                json.text("cureHours"),
                json.text("lowestCelsius"),
                json.text("openMinutes"));
    }

    GlueForm as(String seen, String chosen) {
        return new GlueForm(seen, chosen, name, clampHours, cureHours, lowestCelsius, openMinutes);
    }

    Entry codeEntry() {
        return new Entry("code", "Code", text(code));
    }

    /** A glue as the shop says; its figures are the shop's own. */
    Glue read(Entries entries) {
        String plainCode = text(code).strip().toLowerCase(Locale.ROOT);
        if (!CODE.matcher(plainCode).matches() || plainCode.equals(NEW)) {
            entries.refuse(
                    codeEntry(),
                    (plainCode.isEmpty() ? "is empty" : "“" + text(code).strip() + "” cannot be used")
                            + "; write up to 20 letters a to z, digits and -, for example hide-2");
        }
        String plainName = entries.text(new Entry("name", "Name", text(name)), LONGEST_NAME);
        Entry cureEntry = new Entry("cureHours", "Cure", text(cureHours));
        BigDecimal clamp = entries.tenths(new Entry("clampHours", "In clamps", text(clampHours)), new Range(1, 7200));
        BigDecimal cure = entries.tenths(cureEntry, new Range(1, 7200));
        BigDecimal lowest = entries.tenths(
                new Entry("lowestCelsius", "Lowest temperature", text(lowestCelsius)), new Range(-100, 500));
        int open = entries.whole(new Entry("openMinutes", "Open time", text(openMinutes)), new Range(1, 480));
        entries.throwIfRefused();
        if (cure.compareTo(clamp) < 0) {
            entries.refuse(
                    cureEntry,
                    "“" + text(cureHours).strip() + "” is less than the time in clamps, " + Entries.number(clamp)
                            + " h");
            entries.throwIfRefused();
        }
        return new Glue(plainCode, plainName, duration(clamp), duration(cure), lowest, open, false);
    }

    private static Duration duration(BigDecimal hours) {
        return Duration.ofMinutes(hours.multiply(MINUTES_OF_HOUR)
                .setScale(0, RoundingMode.CEILING)
                .longValueExact());
    }

    static String hours(Duration time) {
        return Entries.number(BigDecimal.valueOf(time.toMinutes()).divide(MINUTES_OF_HOUR, 1, RoundingMode.CEILING));
    }

    private static String text(@Nullable String sent) {
        return sent == null ? "" : sent;
    }
}
