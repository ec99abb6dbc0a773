package org.scarfwright.web;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;

/**
 * What a browser is allowed to do with our pages. There are no accounts: the program listens on this machine only, and
 * {@link LocalHostFilter} keeps foreign names away from it.
 */
@Configuration(proxyBeanMethods = false)
class WebSecurity {
    private static final String CONTENT_SECURITY_POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; "
            + "img-src 'self'; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; "
            + "frame-ancestors 'none'";

    @Bean
    SecurityFilterChain pagesAndApi(HttpSecurity http) {
        return http.authorizeHttpRequests(a -> a.anyRequest().permitAll())
                // Pages carry a token. The API takes none: SameOriginFilter refuses what another site's page sends.
                // The token lives in a cookie, not in a session, so that a form typed before a restart still goes
                // through.
                .csrf(c -> c.ignoringRequestMatchers("/api/**").csrfTokenRepository(tokenInCookie()))
                .headers(h -> h.contentSecurityPolicy(p -> p.policyDirectives(CONTENT_SECURITY_POLICY))
                        .referrerPolicy(r -> r.policy(ReferrerPolicy.SAME_ORIGIN))
                        .permissionsPolicyHeader(p -> p.policy("camera=(), microphone=(), geolocation=(), payment=()"))
                        .crossOriginOpenerPolicy(Customizer.withDefaults())
                        .crossOriginResourcePolicy(Customizer.withDefaults()))
                .httpBasic(AbstractHttpConfigurer::disable)
                .formLogin(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .build();
    }

    private static CookieCsrfTokenRepository tokenInCookie() {
        CookieCsrfTokenRepository tokens = new CookieCsrfTokenRepository();
        tokens.setCookieCustomizer(c -> c.httpOnly(true).sameSite("Strict"));
        return tokens;
    }
}
