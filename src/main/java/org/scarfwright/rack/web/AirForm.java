package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Moisture;
import org.scarfwright.shop.ShopAir;
import org.scarfwright.shop.ShopAir.Air;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.EquilibriumMoisture;

/** Temperature and humidity as they stand in an address or a form: raw text in, air within the published range out. */
final class AirForm {
    static final String CELSIUS = "celsius";
    static final String HUMIDITY = "rh";

    /** The keys of the shop's air, in JSON and on the page. */
    static final String NOW_CELSIUS = "nowCelsius";

    static final String NOW_HUMIDITY = "nowRh";
    static final String DRY_CELSIUS = "dryCelsius";
    static final String DRY_HUMIDITY = "dryRh";
    static final String DAMP_CELSIUS = "dampCelsius";
    static final String DAMP_HUMIDITY = "dampRh";

    private static final String DEGREE = "°C";
    private static final String PERCENT = "%";

    /** Where one air stands among the values, and what its two fields are called. */
    private record Keys(String celsius, String celsiusLabel, String humidity, String humidityLabel) {}

    private static final Keys ANY = new Keys(CELSIUS, "Temperature", HUMIDITY, "Relative humidity");
    private static final Keys NOW = new Keys(NOW_CELSIUS, "Temperature now", NOW_HUMIDITY, "Relative humidity now");
    private static final Keys DRY =
            new Keys(DRY_CELSIUS, "Driest air, temperature", DRY_HUMIDITY, "Driest air, relative humidity");
    private static final Keys DAMP =
            new Keys(DAMP_CELSIUS, "Dampest air, temperature", DAMP_HUMIDITY, "Dampest air, relative humidity");

    private AirForm() {}

    /** @return null when anything was refused; the reasons are then the query's errors */
    static @Nullable Air read(QueryText query) {
        return read(query, ANY);
    }

    /** One temperature by itself. */
    static @Nullable BigDecimal celsius(QueryText query, String key) {
        return query.read(key, "Temperature", "21.1", AirForm::temperature);
    }

    /**
     * The shop's air. What the hygrometer shows may be left out, both figures together.
     *
     * @param today the day a reading is kept under
     * @return null when anything was refused; the reasons are then the query's errors
     */
    static @Nullable ShopAir shopAir(QueryText query, LocalDate today) {
        boolean none =
                query.typed(NOW_CELSIUS).isBlank() && query.typed(NOW_HUMIDITY).isBlank();
        Air now = none ? null : read(query, NOW);
        Air driest = read(query, DRY);
        Air dampest = read(query, DAMP);
        if (driest == null || dampest == null || (now == null && !none)) {
            return null;
        }
        Moisture low = EquilibriumMoisture.of(driest.celsius(), driest.humidity());
        Moisture high = EquilibriumMoisture.of(dampest.celsius(), dampest.humidity());
        if (high.compareTo(low) <= 0) {
            query.refuse(
                    DAMP_HUMIDITY,
                    DAMP.humidityLabel(),
                    "brings wood to " + high + ", which is not above the " + low + " of the driest air");
            return null;
        }
        return new ShopAir(now, now == null ? null : today, driest, dampest);
    }

    /** The shop's air as texts of its form. */
    static Map<String, String> texts(ShopAir air) {
        Map<String, String> texts = new LinkedHashMap<>();
        Air now = air.now();
        texts.put(NOW_CELSIUS, now == null ? "" : DecimalText.plain(now.celsius()));
        texts.put(NOW_HUMIDITY, now == null ? "" : DecimalText.plain(now.humidity()));
        texts.put(DRY_CELSIUS, DecimalText.plain(air.driest().celsius()));
        texts.put(DRY_HUMIDITY, DecimalText.plain(air.driest().humidity()));
        texts.put(DAMP_CELSIUS, DecimalText.plain(air.dampest().celsius()));
        texts.put(DAMP_HUMIDITY, DecimalText.plain(air.dampest().humidity()));
        return texts;
    }

    private static @Nullable Air read(QueryText query, Keys keys) {
        BigDecimal celsius = query.read(keys.celsius(), keys.celsiusLabel(), "21.1", AirForm::temperature);
        BigDecimal humidity = query.read(
                keys.humidity(),
                keys.humidityLabel(),
                "65",
                text -> checked(DecimalText.read(text, PERCENT, "65"), EquilibriumMoisture::humidityRefusal));
        return celsius == null || humidity == null ? null : new Air(celsius, humidity);
    }

    private static BigDecimal temperature(String text) {
        return checked(DecimalText.read(text, DEGREE, "21.1"), EquilibriumMoisture::temperatureRefusal);
    }

    private static BigDecimal checked(BigDecimal value, Function<BigDecimal, Optional<String>> refusal) {
        refusal.apply(value).ifPresent(reason -> {
            throw new MeasureFormatException(reason);
        });
        return value;
    }
}
