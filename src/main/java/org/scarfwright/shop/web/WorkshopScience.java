package org.scarfwright.shop.web;

import java.util.List;
import org.scarfwright.web.Science;
import org.scarfwright.web.ScienceRow;
import org.scarfwright.web.ScienceSection;
import org.springframework.stereotype.Component;

/** Sources of the figures the work is laid with. */
@Component
class WorkshopScience implements Science {
    @Override
    public ScienceSection section() {
        return new ScienceSection(
                60,
                "Work",
                "x₁ ≤ … ≤ xₙ the hands-on minutes last recorded of one kind of step, at most ten. What the work needs is "
                        + "rounded up.",
                List.of(ScienceRow.of(
                                "learned-minutes",
                                "minutes learned",
                                "the median: the middle one, or the mean of the middle two; used from n = 3 on",
                                "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.1, from memory; ten and three are choices of"
                                        + " this program")
                        .in("shop.LearnedMinutes")
                        .provedBy("shop.LearnedMinutesTest", "worked by hand; the median of a general library")));
    }
}
