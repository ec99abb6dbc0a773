package org.scarfwright.necks.book;

import java.util.function.Predicate;
import java.util.random.RandomGenerator;

/** Makes codes a person can read aloud and write down: no vowels, and no two letters or digits that look alike. */
final class OrderCodes {
    static final String LETTERS = "CDFHJKMNPRTWXY3479";
    private static final int LENGTH = 4;
    private static final int TRIES_PER_LENGTH = 50;

    private final RandomGenerator random;

    OrderCodes(RandomGenerator random) {
        this.random = random;
    }

    /** A code that is not taken; longer than four signs once those are nearly used up. */
    String next(Predicate<String> taken) {
        for (int tries = 0; ; tries++) {
            StringBuilder code = new StringBuilder();
            int length = LENGTH + tries / TRIES_PER_LENGTH;
            for (int i = 0; i < length; i++) {
                code.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
            }
            if (!taken.test(code.toString())) {
                return code.toString();
            }
        }
    }
}
