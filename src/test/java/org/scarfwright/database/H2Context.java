package org.scarfwright.database;

import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** Changes only the folder: the address and its options are those the program comes with. */
class H2Context implements ApplicationContextInitializer<ConfigurableApplicationContext> {
    @Override
    public void initialize(ConfigurableApplicationContext context) {
        TestPropertyValues.of("scarfwright.home=" + FreshHome.create(), "scarfwright.ledger.check-by-itself=false")
                .applyTo(context);
    }
}
