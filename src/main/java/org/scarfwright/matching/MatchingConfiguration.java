package org.scarfwright.matching;

import org.scarfwright.matching.search.FallbackSearch;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.NativeSolver;
import org.scarfwright.matching.search.OrToolsSearch;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.Orders;
import org.scarfwright.rack.PieceHistory;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.Shop;
import org.scarfwright.wood.SpeciesCatalog;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Wires what carries no annotations of its own: the search is pure Java. */
@Configuration(proxyBeanMethods = false)
class MatchingConfiguration {
    private static final Logger log = LoggerFactory.getLogger(MatchingConfiguration.class);

    /**
     * The search with the native solvers, or the pure one where they cannot be used; every plan names the one that made it. The
     * native library is loaded by the first match, because loading takes about a second.
     */
    @Bean
    MatchSearch matchSearch() {
        return (problem, limit, watch) -> {
            if (NativeSolver.usable()) {
                return new OrToolsSearch().solve(problem, limit, watch);
            }
            log.warn("Matching with the pure Java search: {}", NativeSolver.fault());
            return new FallbackSearch().solve(problem, limit, watch);
        };
    }

    @Bean
    PlanService.Rooms rooms(
            Orders orders,
            Designs designs,
            Rack rack,
            Shop shop,
            SpeciesCatalog woods,
            ObjectProvider<PieceHistory> history,
            ApplicationEventPublisher events) {
        return new PlanService.Rooms(orders, designs, rack, shop, woods, history::getObject, events);
    }
}
