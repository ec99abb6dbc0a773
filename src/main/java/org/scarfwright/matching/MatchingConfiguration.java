package org.scarfwright.matching;

import org.scarfwright.necks.Designs;
import org.scarfwright.necks.Orders;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.Shop;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Wires what carries no annotations of its own: the search is pure Java. */
@Configuration(proxyBeanMethods = false)
class MatchingConfiguration {
    @Bean
    PlanService.Rooms rooms(Orders orders, Designs designs, Rack rack, Shop shop) {
        return new PlanService.Rooms(orders, designs, rack, shop);
    }
}
