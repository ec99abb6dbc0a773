package org.scarfwright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.UnexpectedRollbackException;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * An act sent twice with the same {@code Idempotency-Key} is done once; the second answer repeats the first. The act and
 * its answer are saved in one transaction, so a program that dies between the two has done neither.
 *
 * <p>A refused act is not remembered: it changed nothing and may be sent again, corrected, under the same key.
 *
 * <p>A ZIP file is let through as it is: it may be too large to keep, and whoever takes one knows it again by its content.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 10)
class RepeatedRequestFilter extends OncePerRequestFilter {
    static final String HEADER = "Idempotency-Key";
    private static final Duration KEPT = Duration.ofDays(7);
    private static final int LONGEST_KEY = 200;

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Clock clock;

    RepeatedRequestFilter(JdbcClient jdbc, TransactionTemplate transaction, Clock clock) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return request.getHeader(HEADER) == null
                || !request.getMethod().equals("POST")
                || !request.getRequestURI().startsWith("/api/")
                || "application/zip".equals(request.getContentType());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String key = request.getHeader(HEADER).strip();
        if (key.isEmpty() || key.length() > LONGEST_KEY) {
            response.sendError(
                    HttpServletResponse.SC_BAD_REQUEST, HEADER + " must have 1 to " + LONGEST_KEY + " characters.");
            return;
        }
        byte[] body = request.getInputStream().readAllBytes();
        String fingerprint = fingerprint(request, body);
        ContentCachingResponseWrapper answer = new ContentCachingResponseWrapper(response);
        try {
            transaction.executeWithoutResult(status -> {
                if (repeat(key, fingerprint, answer)) {
                    return;
                }
                run(chain, new ReadBody(request, body), answer);
                if (answer.getStatus() >= 200 && answer.getStatus() < 300) {
                    remember(key, fingerprint, answer);
                } else {
                    status.setRollbackOnly();
                }
            });
        } catch (DuplicateKeyException e) {
            answer.reset();
            answer.sendError(
                    HttpServletResponse.SC_CONFLICT, "The same request is being answered; send it again in a moment.");
        } catch (UnexpectedRollbackException e) {
            if (answer.getStatus() < 400) {
                throw e; // an act that failed after it answered well: never pretend
            }
        } catch (ChainFailure e) {
            e.rethrow();
        }
        answer.copyBodyToResponse();
    }

    private static void run(FilterChain chain, HttpServletRequest request, HttpServletResponse response) {
        try {
            chain.doFilter(request, response);
        } catch (IOException | ServletException e) {
            throw new ChainFailure(e);
        }
    }

    private record Answer(
            String fingerprint,
            int status,
            @Nullable String contentType,
            @Nullable String location,
            @Nullable String etag,
            String body) {}

    private boolean repeat(String key, String fingerprint, HttpServletResponse response) {
        Optional<Answer> known = jdbc.sql("select fingerprint, status, content_type, location, etag, body"
                        + " from repeated_request where request_key = :key")
                .param("key", key)
                .query(Answer.class)
                .optional();
        if (known.isEmpty()) {
            return false;
        }
        Answer a = known.get();
        try {
            if (!a.fingerprint().equals(fingerprint)) {
                response.sendError(
                        HttpServletResponse.SC_CONFLICT,
                        "This " + HEADER + " was used for another request; use a new one for each act.");
                return true;
            }
            response.setStatus(a.status());
            response.setContentType(a.contentType());
            setIfThere(response, HttpHeaders.LOCATION, a.location());
            setIfThere(response, HttpHeaders.ETAG, a.etag());
            response.getOutputStream().write(a.body().getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new ChainFailure(e);
        }
        return true;
    }

    private static void setIfThere(HttpServletResponse response, String header, @Nullable String value) {
        if (value != null) {
            response.setHeader(header, value);
        }
    }

    private void remember(String key, String fingerprint, ContentCachingResponseWrapper answer) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        jdbc.sql("delete from repeated_request where answered_at < :old")
                .param("old", now.minus(KEPT))
                .update();
        jdbc.sql(
                        "insert into repeated_request (request_key, fingerprint, status, content_type, location, etag, body,"
                                + " answered_at) values (:key, :fingerprint, :status, :contentType, :location, :etag, :body, :at)")
                .param("key", key)
                .param("fingerprint", fingerprint)
                .param("status", answer.getStatus())
                .param("contentType", answer.getContentType())
                .param("location", answer.getHeader(HttpHeaders.LOCATION))
                .param("etag", answer.getHeader(HttpHeaders.ETAG))
                .param("body", new String(answer.getContentAsByteArray(), StandardCharsets.UTF_8))
                .param("at", now)
                .update();
    }

    private static String fingerprint(HttpServletRequest request, byte[] body) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            String target = request.getRequestURI() + "?" + request.getQueryString() + "\n";
            sha.update(target.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sha.digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has SHA-256
        }
    }

    /** Carries a checked failure of the chain out of the transaction, which rolls back on it. */
    private static final class ChainFailure extends RuntimeException {
        private static final long serialVersionUID = 1L;

        ChainFailure(Exception cause) {
            super(cause);
        }

        void rethrow() throws IOException, ServletException {
            if (getCause() instanceof IOException io) {
                throw io;
            }
            throw new ServletException(getCause());
        }
    }

    /** The request with its body, which has been read once for the fingerprint. */
    private static final class ReadBody extends HttpServletRequestWrapper {
        private final byte[] body;

        ReadBody(HttpServletRequest request, byte[] body) {
            super(request);
            this.body = body;
        }

        @Override
        public ServletInputStream getInputStream() {
            ByteArrayInputStream in = new ByteArrayInputStream(body);
            return new ServletInputStream() {
                @Override
                public int read() {
                    return in.read();
                }

                @Override
                public int read(byte[] into, int offset, int length) {
                    return in.read(into, offset, length);
                }

                @Override
                public boolean isFinished() {
                    return in.available() == 0;
                }

                @Override
                public boolean isReady() {
                    return true;
                }

                @Override
                public void setReadListener(ReadListener listener) {
                    throw new IllegalStateException("the body is read at once");
                }
            };
        }

        @Override
        public BufferedReader getReader() {
            String encoding = getCharacterEncoding();
            Charset charset = encoding == null ? StandardCharsets.UTF_8 : Charset.forName(encoding);
            return new BufferedReader(new InputStreamReader(getInputStream(), charset));
        }
    }
}
