package org.scarfwright.necks;

import java.util.List;
import java.util.Optional;

/** The shop's designs as the other rooms see them. */
public interface Designs {
    /** In order of their codes. */
    List<NeckDesign> all();

    Optional<NeckDesign> find(String code);
}
