package org.scarfwright.shop;

import java.util.List;
import java.util.Map;

/**
 * What a room keeps of the shop and a shop file must hold. Rooms that build on others come later: their beans are ordered as
 * the rooms are (shop 0, rack 10, necks 20, matching 30, week 40, ledger 50), and each list comes after those it points to.
 */
public interface ShopLists {
    List<ShopList> lists();

    /** Tables, or columns written {@code table.column}, that no shop file holds, each with the reason. */
    default Map<String, String> leftOut() {
        return Map.of();
    }
}
