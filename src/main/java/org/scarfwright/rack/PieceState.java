package org.scarfwright.rack;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/** Where a piece stands in its life. */
public enum PieceState {
    ON_RACK,
    RESERVED,
    AT_BENCH,
    USED_UP,
    SCRAPPED,
    SOLD;

    /** States in which the wood is still in the shop. */
    public static final Set<PieceState> THERE = Collections.unmodifiableSet(EnumSet.of(ON_RACK, RESERVED, AT_BENCH));

    public boolean isThere() {
        return THERE.contains(this);
    }
}
