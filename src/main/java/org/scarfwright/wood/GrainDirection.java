package org.scarfwright.wood;

/** Which way across the grain a size runs. */
public enum GrainDirection {
    /** Across the rings: the width of a quarter-sawn piece. */
    RADIAL,
    /** Along the rings: the width of a flat-sawn piece. */
    TANGENTIAL
}
