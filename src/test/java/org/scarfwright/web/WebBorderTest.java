package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.FilterChain;
import java.net.InetAddress;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

/** Who may reach the program at all: names (DNS rebinding) and origins (RFC 6454, Fetch Metadata). */
class WebBorderTest {
    private static MockHttpServletResponse send(jakarta.servlet.Filter filter, MockHttpServletRequest request)
            throws Exception {
        MockHttpServletResponse response = new MockHttpServletResponse();
        FilterChain chain = new MockFilterChain();
        filter.doFilter(request, response, chain);
        return response;
    }

    private static MockHttpServletRequest post(String host) {
        MockHttpServletRequest request = new MockHttpServletRequest("POST", "/api/plans");
        request.setServerName(host);
        request.addHeader("Host", host + ":8417");
        return request;
    }

    @Test
    void answersOnlyToThisMachinesNamesWhileItListensOnThisMachine() throws Exception {
        LocalHostFilter filter = new LocalHostFilter(InetAddress.getLoopbackAddress(), List.of());
        assertThat(send(filter, post("localhost")).getStatus()).isEqualTo(200);
        assertThat(send(filter, post("127.0.0.1")).getStatus()).isEqualTo(200);
        assertThat(send(filter, post("shop.example")).getStatus()).isEqualTo(403);
    }

    @Test
    void answersToNamesTheShopLists() throws Exception {
        LocalHostFilter filter = new LocalHostFilter(InetAddress.getLoopbackAddress(), List.of("Shop.example"));
        assertThat(send(filter, post("shop.example")).getStatus()).isEqualTo(200);
        assertThat(send(filter, post("other.example")).getStatus()).isEqualTo(403);
    }

    @Test
    void answersToAnyNameOnceItIsOpenedToTheNetwork() throws Exception {
        LocalHostFilter filter = new LocalHostFilter(null, List.of());
        assertThat(send(filter, post("bench.example")).getStatus()).isEqualTo(200);
    }

    @Test
    void refusesAChangeSentForAnotherSite() throws Exception {
        MockHttpServletRequest request = post("localhost");
        request.addHeader("Origin", "http://elsewhere.example");
        assertThat(send(new SameOriginFilter(), request).getStatus()).isEqualTo(403);

        MockHttpServletRequest crossSite = post("localhost");
        crossSite.addHeader("Sec-Fetch-Site", "cross-site");
        assertThat(send(new SameOriginFilter(), crossSite).getStatus()).isEqualTo(403);

        MockHttpServletRequest opaque = post("localhost");
        opaque.addHeader("Origin", "null");
        assertThat(send(new SameOriginFilter(), opaque).getStatus()).isEqualTo(403);
    }

    @Test
    void letsOurOwnPagesAndToolsChangeThings() throws Exception {
        MockHttpServletRequest own = post("localhost");
        own.addHeader("Origin", "http://localhost:8417");
        own.addHeader("Sec-Fetch-Site", "same-origin");
        assertThat(send(new SameOriginFilter(), own).getStatus()).isEqualTo(200);
        assertThat(send(new SameOriginFilter(), post("localhost")).getStatus()).isEqualTo(200);
    }

    @Test
    void letsAnotherSitesLinkOpenAPage() throws Exception {
        MockHttpServletRequest link = new MockHttpServletRequest("GET", "/rack");
        link.addHeader("Sec-Fetch-Site", "cross-site");
        assertThat(send(new SameOriginFilter(), link).getStatus()).isEqualTo(200);
    }
}
