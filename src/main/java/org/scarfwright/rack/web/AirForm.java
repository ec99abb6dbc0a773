package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.EquilibriumMoisture;

/** Temperature and humidity as they stand in an address. */
final class AirForm {
    static final String CELSIUS = "celsius";
    static final String HUMIDITY = "rh";

    /** A temperature may be below nothing, which no other measure of the program is. */
    private static final Pattern DEGREES = Pattern.compile("[-\u2212+]?\\d{1,4}(?:[.,]\\d{1,6})?");

    private static final int SHOWN = 40;

    /** Air of steady temperature and humidity, within the published range. */
    record Air(BigDecimal celsius, BigDecimal humidity) {}

    private AirForm() {}

    /** @return null when anything was refused; the reasons are then the query's errors */
    static @Nullable Air read(QueryText query) {
        BigDecimal celsius = query.read(
                CELSIUS,
                "Temperature",
                "21.1",
                text -> number(text, "°C", "21.1", EquilibriumMoisture::temperatureRefusal));
        BigDecimal humidity = query.read(
                HUMIDITY,
                "Relative humidity",
                "65",
                text -> number(text, "%", "65", EquilibriumMoisture::humidityRefusal));
        return celsius == null || humidity == null ? null : new Air(celsius, humidity);
    }

    private static BigDecimal number(
            String text, String unit, String example, Function<BigDecimal, Optional<String>> refusal) {
        String s = text.strip();
        if (s.isEmpty()) {
            throw new MeasureFormatException("is empty; write for example " + example);
        }
        String bare = (s.endsWith(unit) ? s.substring(0, s.length() - unit.length()) : s).strip();
        if (bare.length() > SHOWN || !DEGREES.matcher(bare).matches()) {
            String shown = s.length() <= SHOWN ? s : s.substring(0, SHOWN) + "…";
            throw new MeasureFormatException(
                    "“" + shown + "” is not a number in " + unit + "; write for example " + example);
        }
        BigDecimal value = new BigDecimal(bare.replace(',', '.').replace('\u2212', '-'));
        refusal.apply(value).ifPresent(reason -> {
            throw new MeasureFormatException(reason);
        });
        return value;
    }
}
