package org.scarfwright.shop;

/** Keeps the shop's air. */
public interface ShopAirBook {
    VersionedAir air();

    /** @return false, and nothing changed, when somebody changed it since that version */
    boolean change(long seenVersion, ShopAir air);

    /** The air and the version it stands at. */
    record VersionedAir(long version, ShopAir air) {}
}
