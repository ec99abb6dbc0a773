package org.scarfwright.shop.startup;

import java.net.Inet6Address;
import java.net.InetAddress;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Says where to find the program once it answers. */
@Component
class ReadyLine {
    private static final Logger log = LoggerFactory.getLogger(ReadyLine.class);

    private final @Nullable InetAddress listening;

    ReadyLine(@Value("${server.address:#{null}}") @Nullable InetAddress listening) {
        this.listening = listening;
    }

    @EventListener
    void ready(ApplicationReadyEvent event) {
        if (event.getApplicationContext() instanceof WebServerApplicationContext web && web.getWebServer() != null) {
            log.info(
                    "Scarfwright is ready: {}",
                    address(listening, web.getWebServer().getPort()));
        }
    }

    static String address(@Nullable InetAddress listening, int port) {
        String host;
        if (listening == null || listening.isAnyLocalAddress()) {
            host = "localhost";
        } else if (listening instanceof Inet6Address) {
            host = "[" + listening.getHostAddress() + "]";
        } else {
            host = listening.getHostAddress();
        }
        return "http://" + host + ":" + port;
    }
}
