package org.scarfwright.necks;

/** How alike a neck and its head must be. */
public enum MatchRule {
    ANY,
    SAME_WOOD,
    SAME_LOT,
    SAME_PIECE
}
