package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Moisture;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopAir;
import org.scarfwright.shop.ShopAirBook;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.wood.EquilibriumMoisture;
import org.scarfwright.wood.Readiness;
import org.springframework.stereotype.Component;

/** Whether a piece is ready to be glued by the shop's rules and in the shop's air. */
@Component
public class PieceReadiness {
    private final Shop shop;
    private final ShopAirBook air;

    PieceReadiness(Shop shop, ShopAirBook air) {
        this.shop = shop;
        this.air = air;
    }

    public Readiness of(Piece piece) {
        MoistureReading reading = piece.moisture();
        return of(reading == null ? null : reading.content());
    }

    /** @param reading null when nobody read it */
    public Readiness of(@Nullable Moisture reading) {
        ShopSettings rules = shop.settings();
        return Readiness.of(
                reading,
                new Readiness.Limits(rules.driest(), rules.wettest(), rules.moistureApart()),
                moistureInShopAir());
    }

    /** What the shop's air brings wood to; null when nobody read the hygrometer. */
    public @Nullable Moisture moistureInShopAir() {
        ShopAir.Air now = air.air().air().now();
        return now == null ? null : EquilibriumMoisture.of(now.celsius(), now.humidity());
    }
}
