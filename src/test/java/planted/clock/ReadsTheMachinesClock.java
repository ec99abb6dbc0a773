package planted.clock;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Date;

/** Asks the machine what time it is, in five ways. */
public final class ReadsTheMachinesClock {
    private ReadsTheMachinesClock() {}

    @SuppressWarnings({"JavaUtilDate", "JavaTimeDefaultTimeZone"})
    public static long sum() {
        return Instant.now().getEpochSecond()
                + LocalDate.now(ZoneId.of("UTC")).toEpochDay()
                + Clock.systemUTC().getZone().hashCode()
                + System.currentTimeMillis()
                + new Date().getTime();
    }
}
