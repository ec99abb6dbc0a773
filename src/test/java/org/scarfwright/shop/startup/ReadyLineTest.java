package org.scarfwright.shop.startup;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.UnknownHostException;
import org.junit.jupiter.api.Test;

class ReadyLineTest {
    @Test
    void printsAnAddressABrowserOpens() throws UnknownHostException {
        assertThat(ReadyLine.address(ip(127, 0, 0, 1), 8417)).isEqualTo("http://127.0.0.1:8417");
        assertThat(ReadyLine.address(ip(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1), 8417))
                .isEqualTo("http://[0:0:0:0:0:0:0:1]:8417");
        assertThat(ReadyLine.address(ip(0, 0, 0, 0), 80)).isEqualTo("http://localhost:80");
        assertThat(ReadyLine.address(null, 8417)).isEqualTo("http://localhost:8417");
    }

    private static InetAddress ip(int... bytes) throws UnknownHostException {
        byte[] address = new byte[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            address[i] = (byte) bytes[i];
        }
        return InetAddress.getByAddress(address);
    }
}
