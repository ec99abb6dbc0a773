package org.scarfwright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Refuses a form with a file that is larger than its address takes, by the length the request says it has, before any of it is
 * read. The server itself knows one limit for all addresses, the largest. Forms of unknown length are refused; no browser
 * sends one.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 30)
class UploadLimit extends OncePerRequestFilter {
    /** 32 MB for the file and some for the form around it. */
    static final long USUAL = 33L << 20;

    private final List<LargeUpload> large;

    UploadLimit(List<LargeUpload> large) {
        this.large = List.copyOf(large);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String type = request.getContentType();
        if (type != null && type.toLowerCase(Locale.ROOT).startsWith("multipart/")) {
            if (request.getContentLengthLong() > most(request.getRequestURI())) {
                response.sendError(HttpServletResponse.SC_REQUEST_ENTITY_TOO_LARGE);
                return;
            }
            if (request.getHeader("Transfer-Encoding") != null) {
                response.sendError(HttpServletResponse.SC_LENGTH_REQUIRED);
                return;
            }
        }
        chain.doFilter(request, response);
    }

    private long most(String address) {
        return large.stream()
                .filter(l -> l.address().equals(address))
                .mapToLong(LargeUpload::mostBytes)
                .findFirst()
                .orElse(USUAL);
    }
}
