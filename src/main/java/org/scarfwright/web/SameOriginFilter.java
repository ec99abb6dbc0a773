package org.scarfwright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Refuses a changing request to the API that a browser sends for a page of another site. A tool without a browser sends
 * neither header and passes.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 20)
class SameOriginFilter extends OncePerRequestFilter {
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getRequestURI().startsWith("/api/")
                && !READING.contains(request.getMethod())
                && comesFromElsewhere(request)) {
            response.sendError(
                    HttpServletResponse.SC_FORBIDDEN, "A page of another site may not change anything here.");
            return;
        }
        chain.doFilter(request, response);
    }

    private static boolean comesFromElsewhere(HttpServletRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            return true;
        }
        String origin = request.getHeader("Origin");
        return origin != null && !sameHost(origin, request.getHeader("Host"));
    }

    private static boolean sameHost(String origin, @Nullable String host) {
        try {
            String authority = URI.create(origin).getRawAuthority();
            return authority != null
                    && host != null
                    && authority.toLowerCase(Locale.ROOT).equals(host.toLowerCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            return false; // an origin nobody can read is not ours
        }
    }
}
