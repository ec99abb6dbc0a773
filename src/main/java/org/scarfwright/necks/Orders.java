package org.scarfwright.necks;

import java.util.List;
import java.util.Optional;

/** The shop's orders as the other rooms see them. */
public interface Orders {
    /** In order of priority (highest first), due day, code. */
    List<NeckOrder> inWeek(IsoWeek week);

    /** Weeks that have orders, earliest first. */
    List<IsoWeek> weeks();

    Optional<NeckOrder> find(String code);
}
