package org.scarfwright.shop.startup;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class H2AddressGuardTest {
    @Test
    void acceptsTheAddressTheProgramComesWith() throws IOException {
        Properties shipped = new Properties();
        try (InputStream in = getClass().getResourceAsStream("/application.properties")) {
            shipped.load(in);
        }
        assertThatCode(() -> H2AddressGuard.check(shipped.getProperty("spring.datasource.url")))
                .doesNotThrowAnyException();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jdbc:h2:file:./shop",
                "jdbc:h2:file:./shop;MODE=PostgreSQL",
                "jdbc:h2:file:./shop;MODE=PostgreSQL;WRITE_DELAY=500",
                "jdbc:h2:file:./shop;WRITE_DELAY=00",
                "jdbc:h2:file:./WRITE_DELAY=0",
                "JDBC:H2:mem:shop"
            })
    void refusesAnAddressThatCouldLoseConfirmedWork(String address) {
        assertThatThrownBy(() -> H2AddressGuard.check(address))
                .isInstanceOf(StartRefusedException.class)
                .hasMessageContaining(address)
                .hasMessageContaining("has no WRITE_DELAY=0");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jdbc:h2:file:./shop;WRITE_DELAY=0;DATABASE_TO_LOWER=TRUE",
                "jdbc:h2:file:./shop;database_to_lower=false;write_delay=0"
            })
    void refusesLowerCaseNames(String address) {
        assertThatThrownBy(() -> H2AddressGuard.check(address))
                .isInstanceOf(StartRefusedException.class)
                .hasMessageContaining("DATABASE_TO_LOWER");
    }

    @ParameterizedTest
    @ValueSource(strings = {"jdbc:postgresql://localhost/shop", "jdbc:h2:file:./shop;write_delay=0; MODE=PostgreSQL"})
    void acceptsEveryOtherAddress(String address) {
        assertThatCode(() -> H2AddressGuard.check(address)).doesNotThrowAnyException();
    }
}
