package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.common.math.Quantiles;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the median of Guava, a general library. */
class YieldMedianTest {
    @Test
    void agreesWithTheMedianOfAGeneralLibrary() {
        Random random = new Random(852);
        for (int round = 0; round < 1000; round++) {
            List<Double> values =
                    random.doubles(1 + random.nextInt(Yield.MEDIAN_OF)).boxed().toList();
            assertThat(YieldService.median(values)).isCloseTo(Quantiles.median().compute(values), within(1e-12));
        }
    }
}
