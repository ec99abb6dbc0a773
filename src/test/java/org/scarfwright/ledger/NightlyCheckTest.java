package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import org.junit.jupiter.api.Test;

/** When the ledger is gone through; instants worked out by hand from the days the clocks changed in Germany in 2026. */
class NightlyCheckTest {
    private static Instant next(String now) {
        return NightlyCheck.next(ZonedDateTime.parse(now));
    }

    @Test
    void isThreeInTheMorningWhateverTheClocksDo() {
        assertThat(next("2026-11-26T07:20:00+01:00[Europe/Berlin]")).isEqualTo("2026-11-27T02:00:00Z");
        assertThat(next("2026-11-26T02:59:59+01:00[Europe/Berlin]")).isEqualTo("2026-11-26T02:00:00Z");
        assertThat(next("2026-11-26T03:00:00+01:00[Europe/Berlin]")).isEqualTo("2026-11-27T02:00:00Z");
        // On 25 October the hour before three came twice, on 29 March it did not come at all.
        assertThat(next("2026-10-24T12:00:00+02:00[Europe/Berlin]")).isEqualTo("2026-10-25T02:00:00Z");
        assertThat(next("2026-03-28T12:00:00+01:00[Europe/Berlin]")).isEqualTo("2026-03-29T01:00:00Z");
        assertThat(Duration.between(
                        Instant.parse("2026-10-24T10:00:00Z"), next("2026-10-24T12:00:00+02:00[Europe/Berlin]")))
                .isEqualTo(Duration.ofHours(16));
    }
}
