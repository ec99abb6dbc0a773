package org.scarfwright.web;

import java.util.List;
import org.springframework.stereotype.Component;

/** Sources of what is measured and rounded. */
@Component
class MeasureScience implements Science {
    @Override
    public ScienceSection section() {
        return new ScienceSection(
                10,
                "Measures",
                "Lengths are whole micrometres; what a person typed is kept beside them.",
                List.of(
                        ScienceRow.of(
                                        "inch",
                                        "inch",
                                        "25.4 mm exactly, so 1/64 in = 396.875 µm, rounded once on entry",
                                        "international yard and pound agreement, 1959")
                                .in("measure.LengthUnit", "measure.LengthParser")
                                .provedBy("measure.LengthParserTest", ""),
                        ScienceRow.of(
                                        "rounding",
                                        "rounding",
                                        "what a job needs up, what the rack offers down, what is shown to the nearest; a double "
                                                + "within 10⁻⁶ µm of a whole one is that one",
                                        "derived here")
                                .in("measure.Length")
                                .provedBy("measure.MeasuresTest", ""),
                        ScienceRow.of("volume", "volume, area", "whole µm³ and µm², exact", "derived here")
                                .in("measure.Volume", "measure.Area")
                                .provedBy("measure.MeasuresTest", "decimal arithmetic")));
    }
}
