package org.scarfwright.week;

import org.scarfwright.week.schedule.CpSatScheduler;
import org.scarfwright.week.schedule.GreedyScheduler;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration
class WeekConfiguration {
    /** Chosen when it is first needed: the native library is loaded off the way of the start. */
    @Bean
    Searches searches() {
        return () -> CpSatScheduler.usable()
                ? new Searches.Chosen(new CpSatScheduler(), "", true)
                : new Searches.Chosen(
                        new GreedyScheduler(),
                        "The exact search cannot run on this machine, so the work was laid one after another; a better schedule"
                                + " may exist.",
                        false);
    }
}
