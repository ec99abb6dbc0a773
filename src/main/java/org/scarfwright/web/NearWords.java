package org.scarfwright.web;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds the known words that a mistyped one was most likely meant to be. */
public final class NearWords {
    private static final int LONGEST = 60;

    private NearWords() {}

    /**
     * The nearest known words, nearest first: those the text begins, is part of, or differs from by few letters.
     *
     * @param most how many at most
     */
    public static List<String> of(String text, Collection<String> known, int most) {
        String wanted = plain(text);
        if (wanted.isEmpty() || wanted.length() > LONGEST) {
            return List.of();
        }
        int allowed = 1 + wanted.length() / 4;
        return known.stream()
                .map(word -> new Scored(word, score(wanted, plain(word))))
                .filter(s -> s.score() <= allowed)
                .sorted(Comparator.comparingInt(Scored::score).thenComparing(Scored::word))
                .limit(most)
                .map(Scored::word)
                .toList();
    }

    private record Scored(String word, int score) {}

    private static String plain(String text) {
        return text.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", " ")
                .strip();
    }

    private static int score(String wanted, String word) {
        String shorter = wanted.length() < word.length() ? wanted : word;
        String longer = shorter.equals(wanted) ? word : wanted;
        if (shorter.length() >= 3 && longer.contains(shorter)) {
            return 1;
        }
        return distance(wanted, word);
    }

    /**
     * Edit distance: the fewest letters put in, taken out or changed. Source: R. A. Wagner and M. J. Fischer, The
     * String-to-String Correction Problem, Journal of the ACM 21 (1974).
     */
    static int distance(String a, String b) {
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, 1 + Math.min(above[j], row[j - 1]));
            }
            above = row;
        }
        return above[b.length()];
    }
}
