package org.scarfwright.wood;

import java.util.List;
import java.util.Optional;

/** The woods the shop knows. */
public interface SpeciesCatalog {
    /** In order of their common names. */
    List<Species> all();

    Optional<Species> find(String id);
}
