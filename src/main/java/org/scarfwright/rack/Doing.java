package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.web.FieldError;

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

    /** What is wrong with a name and a reason somebody typed, where a reason must be given; empty when nothing is. */
    public static List<FieldError> refusals(String who, String why) {
        List<FieldError> errors = new ArrayList<>();
        if (why.isBlank()) {
            errors.add(new FieldError("/why", "Why", "", "is empty; write in a few words what happened"));
        }
        if (why.length() > LONGEST_WHY) {
            errors.add(new FieldError(
                    "/why", "Why", why, "is " + why.length() + " characters long; write at most " + LONGEST_WHY));
        }
        if (who.length() > LONGEST_WHO) {
            errors.add(new FieldError(
                    "/who", "Who", who, "is " + who.length() + " characters long; write at most " + LONGEST_WHO));
        }
        return errors;
    }
}
