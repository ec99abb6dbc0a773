package org.scarfwright.wood;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import org.scarfwright.measure.Moisture;

/**
 * The moisture content wood comes to when it is left in air of steady temperature and humidity.
 *
 * <p>EMC = (1800/W)·[K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²)/(1 + K1·K·h + K1·K2·K²·h²)] in percent, with h the relative humidity
 * as a fraction, T in °C, W = 349 + 1.29 T + 0.0135 T², K = 0.805 + 0.000736 T − 0.00000273 T², K1 = 6.27 − 0.00938 T −
 * 0.000303 T², K2 = 1.91 + 0.0407 T − 0.000293 T².
 *
 * <p>Range: −1.1 to 54.4 °C (30 to 130 °F) and 5 to 90 % relative humidity, where it was compared with the printed table. Outside
 * it is refused.
 *
 * <p><b>Source:</b> Forest Products Laboratory, Wood Handbook (FPL-GTR-282), equation 4-5.
 */
public final class EquilibriumMoisture {
    public static final BigDecimal COLDEST = new BigDecimal("-1.1");
    public static final BigDecimal WARMEST = new BigDecimal("54.4");
    public static final BigDecimal DRIEST = BigDecimal.valueOf(5);
    public static final BigDecimal DAMPEST = BigDecimal.valueOf(90);

    /** Halves the range of humidity until it is narrower than a double can tell. */
    private static final int HALVINGS = 60;

    private EquilibriumMoisture() {}

    /**
     * @param celsius temperature of the air in °C
     * @param relativeHumidity in percent
     * @return moisture content in percent of the oven-dry mass
     * @throws IllegalArgumentException outside the range, with a sentence that tells it
     */
    public static double percent(BigDecimal celsius, BigDecimal relativeHumidity) {
        temperatureRefusal(celsius).or(() -> humidityRefusal(relativeHumidity)).ifPresent(reason -> {
            throw new IllegalArgumentException(reason);
        });
        return content(celsius.doubleValue(), relativeHumidity.doubleValue());
    }

    private static double content(double t, double relativeHumidity) {
        double w = 349 + 1.29 * t + 0.0135 * t * t;
        double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
        double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
        double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
        double kh = k * relativeHumidity / 100;
        double first = kh / (1 - kh);
        double second = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
        return 1800 / w * (first + second);
    }

    /** {@link #percent} as a moisture content, to a hundredth of a percent. */
    public static Moisture of(BigDecimal celsius, BigDecimal relativeHumidity) {
        return Moisture.ofPercent(percent(celsius, relativeHumidity));
    }

    /**
     * The relative humidity that keeps wood at a moisture content: equation 4-5 solved for h by halving the range, in which the
     * moisture content only ever rises with the humidity.
     *
     * @param celsius temperature of the air in °C
     * @param content what the wood should stay at
     * @return in percent
     * @throws IllegalArgumentException where no humidity of the range keeps it, with a sentence that tells what can be kept
     */
    public static double humidityKeeping(BigDecimal celsius, Moisture content) {
        temperatureRefusal(celsius).or(() -> contentRefusal(celsius, content)).ifPresent(reason -> {
            throw new IllegalArgumentException(reason);
        });
        double wanted = content.toPercent().doubleValue();
        double low = DRIEST.doubleValue();
        double high = DAMPEST.doubleValue();
        for (int halving = 0; halving < HALVINGS; halving++) {
            double middle = (low + high) / 2;
            if (content(celsius.doubleValue(), middle) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /**
     * Why no humidity of the range keeps wood at this moisture content; reads on from its label.
     *
     * @param celsius within the range
     */
    public static Optional<String> contentRefusal(BigDecimal celsius, Moisture content) {
        double least = content(celsius.doubleValue(), DRIEST.doubleValue());
        double most = content(celsius.doubleValue(), DAMPEST.doubleValue());
        double wanted = content.toPercent().doubleValue();
        return wanted >= least && wanted <= most
                ? Optional.empty()
                : Optional.of("is " + content + "; at " + plain(celsius) + " °C air of " + plain(DRIEST) + " to "
                        + plain(DAMPEST) + " % relative humidity keeps wood at " + tenth(least) + " to " + tenth(most)
                        + " %, for example 7");
    }

    private static String tenth(double percent) {
        return String.format(Locale.ROOT, "%.1f", percent);
    }

    /** Why this temperature is outside the range; reads on from its label. */
    public static Optional<String> temperatureRefusal(BigDecimal celsius) {
        return within(celsius, COLDEST, WARMEST)
                ? Optional.empty()
                : Optional.of("is " + plain(celsius) + " °C; the published figures reach from " + plain(COLDEST)
                        + " to " + plain(WARMEST) + " °C, for example 21.1");
    }

    /** Why this humidity is outside the range; reads on from its label. */
    public static Optional<String> humidityRefusal(BigDecimal relativeHumidity) {
        return within(relativeHumidity, DRIEST, DAMPEST)
                ? Optional.empty()
                : Optional.of("is " + plain(relativeHumidity) + " %; the published figures reach from " + plain(DRIEST)
                        + " to " + plain(DAMPEST) + " %, for example 65");
    }

    private static boolean within(BigDecimal value, BigDecimal low, BigDecimal high) {
        return value.compareTo(low) >= 0 && value.compareTo(high) <= 0;
    }

    private static String plain(BigDecimal value) {
        return value.stripTrailingZeros().toPlainString();
    }
}
