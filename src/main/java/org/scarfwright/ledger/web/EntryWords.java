package org.scarfwright.ledger.web;

import org.scarfwright.rack.Doing;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** Who did something and why, as they were typed. */
final class EntryWords {
    private EntryWords() {}

    /** @throws InvalidInputException when it is too long */
    static String who(String typed) {
        return within(typed.strip(), "who", "Who", Doing.LONGEST_WHO);
    }

    /** @throws InvalidInputException when it is too long */
    static String why(String typed) {
        return within(typed.strip(), "why", "Why", Doing.LONGEST_WHY);
    }

    private static String within(String text, String name, String label, int most) {
        if (text.length() > most) {
            throw new InvalidInputException(new FieldError(
                    "/" + name, label, text, "is " + text.length() + " characters long; write at most " + most));
        }
        return text;
    }
}
