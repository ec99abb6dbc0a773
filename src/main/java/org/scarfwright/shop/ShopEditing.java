package org.scarfwright.shop;

import java.util.List;
import java.util.Optional;
import org.scarfwright.web.ConflictException;

/** Changes to the shop's rules and saws. Each names the version its editor saw. */
public interface ShopEditing {
    VersionedSettings editableSettings();

    /** @return false, and nothing changed, when somebody changed the rules since that version */
    boolean changeSettings(long seenVersion, ShopSettings settings);

    /** In the shop's order of preference. */
    List<VersionedSaw> editableSaws();

    Optional<VersionedSaw> editableSaw(String code);

    /**
     * Adds a saw, the least preferred.
     *
     * @return false, and nothing changed, when another saw has that code
     * @throws ConflictException when two people add a saw at the same moment
     */
    boolean addSaw(Saw saw);

    /** @return false, and nothing changed, when somebody changed or removed the saw of that code since that version */
    boolean changeSaw(long seenVersion, Saw saw);

    /** Puts a saw first in the order of preference. Does nothing when there is none of that code. */
    void preferSaw(String code);

    /**
     * Removes a saw.
     *
     * @return false, and nothing changed, when somebody changed or removed it since that version
     * @throws ConflictException when it is the last one
     */
    boolean removeSaw(long seenVersion, String code);

    /** Rules and the version they stand at. */
    record VersionedSettings(long version, ShopSettings settings) {}

    /** A saw and the version it stands at. */
    record VersionedSaw(long version, Saw saw) {}
}
