package org.scarfwright.rack;

import java.util.Optional;
import org.scarfwright.web.ConflictException;
import org.scarfwright.wood.Species;

/** Woods the shop adds itself; beside the published ones they are used like any other. Only they can be edited or removed. */
public interface OwnWoods {
    /** Any wood, published or own, with its version. */
    Optional<VersionedWood> wood(String id);

    /**
     * Adds a wood of the shop.
     *
     * @param wood its id is not looked at: it gets one made from its common name
     * @return the wood as it is kept
     */
    VersionedWood add(Species wood);

    /** @return false, and nothing changed, when it is not the shop's own or somebody changed it since that version */
    boolean change(long seenVersion, Species wood);

    /**
     * @return false, and nothing removed, when it is not the shop's own or somebody changed it since that version
     * @throws ConflictException while a piece or a design uses it, with a sentence that says so
     */
    boolean remove(long seenVersion, String id);

    /** A wood and the version it stands at. */
    record VersionedWood(long version, Species wood) {}
}
