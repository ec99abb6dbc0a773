package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;

/**
 * One doing of a person, as the ledger is told of it.
 *
 * @param kind what it was as a whole
 * @param who empty: whoever is signed in, or the shop
 * @param why in the person's own words; may be empty
 * @param undoes the entry it takes back
 */
public record Doing(
        PieceChanged.Kind kind,
        String who,
        String why,
        @Nullable Long undoes) {
    /** Longest reason, in characters. */
    public static final int LONGEST_WHY = 2000;

    /** Longest name of a person, in characters. */
    public static final int LONGEST_WHO = 80;

    /** By whoever is signed in, for no stated reason. */
    public static Doing of(PieceChanged.Kind kind) {
        return new Doing(kind, "", "", null);
    }

    public static Doing of(PieceChanged.Kind kind, String who, String why) {
        return new Doing(kind, who, why, null);
    }
}
