package org.scarfwright.rack;

/** Where a piece stands in its life. */
public enum PieceState {
    ON_RACK,
    RESERVED,
    AT_BENCH,
    USED_UP,
    SCRAPPED
}
