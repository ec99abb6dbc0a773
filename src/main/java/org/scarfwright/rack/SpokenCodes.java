package org.scarfwright.rack;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Finds the piece somebody means by what they typed, scanned or heard. Tried in this order, and the first that finds anything
 * counts: the code as written; without case, spaces and signs; with signs that look alike taken as one; and with digits and
 * letters spelled out, as they are read aloud over a noisy saw.
 *
 * <p>Source of the words for letters: the spelling alphabet of the International Civil Aviation Organization (Annex 10, volume
 * II), from memory.
 */
final class SpokenCodes {
    private static final Pattern ADDRESS = Pattern.compile("(?is)^.*/p/([^/?#]*).*$");
    private static final Pattern SPACE = Pattern.compile("\\s+");
    private static final Pattern NO_SIGN = Pattern.compile("[^A-Z0-9]+");
    private static final List<String> ALIKE = List.of("O0", "Q0", "I1", "L1", "S5", "Z2", "B8", "G6", "VU");

    private static final char[] FOLDED = foldedSigns();

    private static final Map<String, String> WORDS = Arrays.stream(
                    ("ZERO=0 OH=0 NOUGHT=0 ONE=1 TWO=2 THREE=3 FOUR=4 FIVE=5"
                                    + " SIX=6 SEVEN=7 EIGHT=8 NINE=9 NINER=9 DASH= HYPHEN= MINUS= ALFA=A ALPHA=A BRAVO=B CHARLIE=C DELTA=D"
                                    + " ECHO=E FOXTROT=F GOLF=G HOTEL=H INDIA=I JULIETT=J JULIET=J KILO=K LIMA=L MIKE=M NOVEMBER=N OSCAR=O"
                                    + " PAPA=P QUEBEC=Q ROMEO=R SIERRA=S TANGO=T UNIFORM=U VICTOR=V WHISKEY=W XRAY=X YANKEE=Y ZULU=Z")
                            .split(" "))
            .map(w -> w.split("=", -1))
            .collect(Collectors.toUnmodifiableMap(w -> w[0], w -> w[1]));

    private SpokenCodes() {}

    /** A code with all differences taken away that do not matter in some way of saying it. */
    static String alikeOf(String code) {
        return folded(bare(code));
    }

    /** What {@link #alikeOf} says of every code that may be meant: others need not be compared. */
    static Set<String> alike(String said) {
        String words = words(said);
        return new HashSet<>(List.of(alikeOf(words), alikeOf(spelled(words))));
    }

    private static String words(String said) {
        return plain(ADDRESS.matcher(said.strip()).replaceFirst(r -> Matcher.quoteReplacement(r.group(1))));
    }

    /** Codes among these that may be meant, in their order; empty when none is like it. */
    static List<String> meant(String said, Collection<String> codes) {
        String words = words(said);
        List<UnaryOperator<String>> ways =
                new ArrayList<>(List.of(SpokenCodes::unspaced, SpokenCodes::bare, SpokenCodes::alikeOf));
        for (UnaryOperator<String> way : ways) {
            List<String> found = like(way.apply(words), codes, way);
            if (!found.isEmpty()) {
                return found;
            }
        }
        String spelled = spelled(words);
        List<String> found = like(spelled, codes, SpokenCodes::bare);
        return found.isEmpty() ? like(folded(spelled), codes, ways.get(2)) : found;
    }

    private static List<String> like(String wanted, Collection<String> codes, UnaryOperator<String> way) {
        return wanted.isEmpty()
                ? List.of()
                : codes.stream().filter(c -> way.apply(c).equals(wanted)).toList();
    }

    /** Capitals without accents; what a keyboard of another language or of full width makes is taken as the sign it shows. */
    private static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}+", "")
                .toUpperCase(Locale.ROOT);
    }

    private static String unspaced(String text) {
        return text.chars().noneMatch(Character::isWhitespace)
                ? text
                : SPACE.matcher(text).replaceAll("");
    }

    /** Sign by sign: there may be a hundred thousand codes to compare. */
    private static String bare(String text) {
        StringBuilder bare = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) {
                bare.append(c);
            }
        }
        return bare.toString();
    }

    private static String folded(String bare) {
        StringBuilder folded = new StringBuilder(bare.length());
        for (int i = 0; i < bare.length(); i++) {
            char c = bare.charAt(i);
            folded.append(c < FOLDED.length ? FOLDED[c] : c);
        }
        return folded.toString();
    }

    private static char[] foldedSigns() {
        char[] signs = new char[128];
        for (char c = 0; c < signs.length; c++) {
            signs[c] = c;
        }
        ALIKE.forEach(pair -> signs[pair.charAt(0)] = pair.charAt(1));
        return signs;
    }

    private static String spelled(String text) {
        return NO_SIGN.splitAsStream(text.replace("X-RAY", "XRAY"))
                .map(w -> WORDS.getOrDefault(w, w))
                .collect(Collectors.joining());
    }
}
