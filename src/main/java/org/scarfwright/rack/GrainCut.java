package org.scarfwright.rack;

/** How the growth rings lie to the wide face. */
public enum GrainCut {
    FLAT,
    RIFT,
    QUARTER,
    UNKNOWN
}
