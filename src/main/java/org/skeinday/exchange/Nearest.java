package org.skeinday.exchange;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that somebody most likely meant. */
public final class Nearest {
    private Nearest() {}

    /** The known word with the fewest letters changed (Levenshtein's distance); empty without known words. */
    public static Optional<String> to(String typed, Collection<String> known) {
        String wanted = typed.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(Comparator.comparingInt((String word) -> distance(wanted, word.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /** The same, but only where it may well have been meant: begun alike, or with at most two letters changed. */
    public static Optional<String> close(String typed, Collection<String> known) {
        return known.stream()
                .filter(word -> word.length() > 2 && typed.length() > 2)
                .filter(word -> word.startsWith(typed) || typed.startsWith(word))
                .findFirst()
                .or(() -> to(typed, known).filter(word -> distance(typed, word) <= 2));
    }

    static int distance(String one, String other) {
        int[] above = new int[other.length() + 1];
        for (int j = 0; j <= other.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int[] row = new int[other.length() + 1];
            row[0] = i;
            for (int j = 1; j <= other.length(); j++) {
                int change = above[j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(above[j], row[j - 1]) + 1);
            }
            above = row;
        }
        return above[other.length()];
    }
}
