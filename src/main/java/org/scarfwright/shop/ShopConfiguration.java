package org.scarfwright.shop;

import java.time.Clock;
import java.time.ZoneId;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The shop's wall clock: days are the days of the machine's time zone. */
@Configuration(proxyBeanMethods = false)
class ShopConfiguration {
    @Bean
    Clock clock() {
        return Clock.system(ZoneId.systemDefault());
    }
}
