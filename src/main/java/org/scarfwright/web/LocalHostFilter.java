package org.scarfwright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.InetAddress;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * While the program listens on this machine only, it answers to this machine's names only: a foreign name that is made to
 * resolve to it would let a foreign page read the shop (DNS rebinding). A shop that opens the program to its network lists
 * the names it uses in {@code scarfwright.hosts}.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
class LocalHostFilter extends OncePerRequestFilter {
    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

    private final boolean anyName;
    private final Set<String> names = new HashSet<>(LOOPBACK);

    LocalHostFilter(
            @Value("${server.address:#{null}}") @Nullable InetAddress address,
            @Value("${scarfwright.hosts:}") List<String> hosts) {
        hosts.stream().map(h -> h.strip().toLowerCase(Locale.ROOT)).forEach(names::add);
        names.remove("");
        anyName = hosts.isEmpty() && (address == null || !address.isLoopbackAddress());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!anyName && !names.contains(request.getServerName().toLowerCase(Locale.ROOT))) {
            response.sendError(
                    HttpServletResponse.SC_FORBIDDEN,
                    "This program does not answer to that name; list it in scarfwright.hosts to allow it.");
            return;
        }
        chain.doFilter(request, response);
    }
}
