package org.scarfwright.shop;

import java.time.Clock;
import java.time.ZoneId;
import org.scarfwright.web.LargeUpload;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class ShopConfiguration {
    /** The shop's wall clock: days are the days of the machine's time zone. */
    @Bean
    Clock clock() {
        return Clock.system(ZoneId.systemDefault());
    }

    /** The file and some for the form around it. */
    @Bean
    LargeUpload shopFile() {
        return new LargeUpload("/shop/file", ShopFiles.MOST_BYTES + (1 << 20));
    }
}
