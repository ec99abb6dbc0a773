package org.scarfwright.rack;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import java.util.regex.Pattern;

/**
 * Codes of pieces: short enough to write on the wood and to read aloud. Codes the program makes hold no two signs that look
 * alike in handwriting (I, 1, L; O, 0, Q; S, 5; Z, 2; B, 8; G, 6; U, V) and no vowels, so that they spell no words.
 */
final class PieceCodes {
    private static final String SIGNS = "CDFHJKMNPRTWXY3479";
    private static final int SHORTEST = 3;
    private static final int SPARE = 8;
    private static final Pattern OWN = Pattern.compile("[A-Za-z0-9-]{1,12}");
    private static final Pattern ANY_SIGN = Pattern.compile(".*[A-Za-z0-9].*");

    /** These name pages below the rack. */
    private static final Set<String> TAKEN = Set.of("NEW", "IMPORT");

    private PieceCodes() {}

    /** As it is stored and shown. */
    static String written(String text) {
        return text.strip().toUpperCase(Locale.ROOT);
    }

    /**
     * The code in digits and capitals alone, which every database sorts alike and as {@link String#compareTo} sorts codes:
     * hyphen, digits, letters. The migration that added it spells it the same way.
     */
    static String order(String code) {
        return code.replace("0", "01").replace("-", "00");
    }

    /** Why a code a person wrote cannot be one; reads on from “Code”. */
    static Optional<String> refusal(String text) {
        String quoted = "“" + (text.length() > 40 ? text.substring(0, 40) + "…" : text) + "”";
        if (!OWN.matcher(text.strip()).matches() || !ANY_SIGN.matcher(text).matches()) {
            return Optional.of(quoted + " is not 1 to 12 letters (A to Z), digits or hyphens; write for example M-14");
        }
        if (TAKEN.contains(written(text))) {
            return Optional.of(quoted + " is a word the program uses itself; write for example M-14");
        }
        return Optional.empty();
    }

    /**
     * New codes, all different.
     *
     * @param pieces how many pieces the rack ever had: codes grow longer before they run short
     * @param taken true for a code that exists already
     */
    static List<String> make(int count, long pieces, Predicate<String> taken, RandomGenerator random) {
        int length = SHORTEST;
        double room = Math.pow(SIGNS.length(), length);
        while (room < (double) SPARE * (pieces + count)) {
            length++;
            room *= SIGNS.length();
        }
        Set<String> codes = new LinkedHashSet<>();
        while (codes.size() < count) {
            StringBuilder code = new StringBuilder(length);
            for (int i = 0; i < length; i++) {
                code.append(SIGNS.charAt(random.nextInt(SIGNS.length())));
            }
            String made = code.toString();
            if (!taken.test(made)) {
                codes.add(made);
            }
        }
        return List.copyOf(codes);
    }
}
