package org.scarfwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShopAddressTest {
    @Test
    void whatTheShopSaysBeatsTheAddressOfThePage() {
        assertThat(new ShopAddress("http://shop.example:8417/").orElse("http://127.0.0.1:8417"))
                .isEqualTo("http://shop.example:8417");
        assertThat(new ShopAddress(" ").orElse("http://127.0.0.1:8417")).isEqualTo("http://127.0.0.1:8417");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "shop",
                "ftp://shop",
                "http://",
                "http://sh op",
                "http://shop?x=1",
                "http://a:b@shop",
                "http:shop"
            })
    void refusesWhatNoPhoneCouldOpen(String told) {
        assertThatThrownBy(() -> new ShopAddress(told))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("scarfwright.address is “" + told + "”");
    }

    @Test
    void knowsWhichAddressesOnlyThisMachineCanOpen() {
        assertThat(ShopAddress.isThisMachineOnly("http://127.0.0.1:8417")).isTrue();
        assertThat(ShopAddress.isThisMachineOnly("http://localhost")).isTrue();
        assertThat(ShopAddress.isThisMachineOnly("http://[::1]:8417")).isTrue();
        assertThat(ShopAddress.isThisMachineOnly("http://192.168.1.20:8417")).isFalse();
    }
}
