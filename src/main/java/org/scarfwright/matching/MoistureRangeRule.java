package org.scarfwright.matching;

import java.util.Objects;
import java.util.Optional;
import org.scarfwright.measure.Moisture;
import org.scarfwright.rack.MoistureReading;

/**
 * The piece is at a moisture to glue at. A piece that was never measured is not refused, because a rack that comes from a list
 * without moisture would give no plan at all; the plan says that it must be measured before gluing.
 */
record MoistureRangeRule() implements PartRule {
    @Override
    public String name() {
        return "moisture";
    }

    @Override
    public boolean fits(Trial t) {
        MoistureReading reading = t.piece().moisture();
        return reading == null
                || (reading.content().compareTo(t.shop().settings().driest()) >= 0
                        && reading.content().compareTo(t.shop().settings().wettest()) <= 0);
    }

    @Override
    public Verdict.Refused why(Trial t) {
        Moisture content = Objects.requireNonNull(t.piece().moisture()).content();
        Moisture driest = t.shop().settings().driest();
        Moisture wettest = t.shop().settings().wettest();
        boolean wet = content.compareTo(wettest) > 0;
        return new Verdict.Refused(
                name(),
                "at " + content + " moisture it is " + (wet ? content.minus(wettest) : driest.minus(content)) + " too "
                        + (wet ? "wet" : "dry") + " to glue; " + driest + " to " + wettest + " is right",
                null);
    }

    @Override
    public Optional<String> note(Trial t) {
        return t.piece().moisture() != null
                ? Optional.empty()
                : Optional.of("The moisture of " + t.piece().code() + " was never measured: measure it before gluing.");
    }
}
