package org.scarfwright.shop;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;
import java.util.Set;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Under which address a phone on the shop's network finds the program: what {@code scarfwright.address} says, else the address
 * a page was asked for under.
 */
@Component
public class ShopAddress {
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    private final String told;

    /** @throws IllegalArgumentException when the setting is no address of a program */
    ShopAddress(@Value("${scarfwright.address:}") String told) {
        String address = told.strip().replaceFirst("/+$", "");
        if (!address.isEmpty() && !isAddress(address)) {
            throw new IllegalArgumentException("scarfwright.address is “" + told
                    + "”, which is no address a phone could open; write for example http://192.168.1.20:8417");
        }
        this.told = address;
    }

    /** @param asked the address the page was asked for under, up to where its path begins */
    public String orElse(String asked) {
        return told.isEmpty() ? asked : told;
    }

    /** Whether an address means the machine it is opened on, so that no phone gets anywhere with it. */
    public static boolean isThisMachineOnly(String address) {
        String host = URI.create(address).getHost();
        return host != null && THIS_MACHINE.contains(host.toLowerCase(Locale.ROOT));
    }

    private static boolean isAddress(String address) {
        try {
            URI uri = new URI(address);
            return ("http".equals(uri.getScheme()) || "https".equals(uri.getScheme()))
                    && uri.getHost() != null
                    && uri.getRawQuery() == null
                    && uri.getRawFragment() == null
                    && uri.getRawUserInfo() == null
                    && address.length() <= 100;
        } catch (URISyntaxException e) {
            return false;
        }
    }
}
