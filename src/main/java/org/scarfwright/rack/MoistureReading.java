package org.scarfwright.rack;

import java.time.LocalDate;
import org.scarfwright.measure.Moisture;

/** A moisture content, when it was read and by what. */
public record MoistureReading(Moisture content, LocalDate readOn, Meter meter) {
    /** What it was read with. */
    public enum Meter {
        PIN,
        PINLESS,
        OVEN,
        UNKNOWN
    }
}
