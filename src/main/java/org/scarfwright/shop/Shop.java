package org.scarfwright.shop;

import java.util.List;

/** The shop's rules and saws as they stand now. */
public interface Shop {
    ShopSettings settings();

    /** In the shop's order of preference; never empty. */
    List<Saw> saws();
}
