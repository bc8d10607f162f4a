package org.skeinday.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds things of the record by what people type: each word must be somewhere in the title or the text. */
public final class RecordSearch {
    /** So many are shown. */
    public static final int MOST = 50;

    private static final int WHOLE = 8;
    private static final int BEGINNING = 5;
    private static final int INSIDE = 2;
    private static final int NEARLY = 1;

    /** From so many letters on one letter more, less or another is passed over. */
    private static final int LONG_ENOUGH = 5;

    /** From so many letters on a word may stand inside another. */
    private static final int INSIDE_FROM = 3;

    private final List<Indexed> items;

    /**
     * Something that can be found.
     *
     * @param title its tag or name: weighs more than the text
     * @param at when it was, in ms since 1970 UTC, 0 for no time: of two that fit alike the later comes first
     */
    public record Item(FoundKind kind, String id, String title, String text, long at) {}

    private record Indexed(Item item, List<String> title, List<String> text) {}

    private record Hit(Item item, int score) {}

    /** Takes the words of all items apart once. */
    public RecordSearch(List<Item> items) {
        this.items = items.stream()
                .map(i -> new Indexed(i, SearchWords.searched(i.title()), SearchWords.searched(i.text())))
                .toList();
    }

    /** The best first, at most {@link #MOST}; nothing for a query without a letter or figure. */
    public List<Item> find(String query) {
        List<String> wanted = SearchWords.of(query);
        if (wanted.isEmpty()) {
            return List.of();
        }
        List<Hit> hits = new ArrayList<>();
        for (Indexed item : items) {
            score(item, wanted).ifPresent(score -> hits.add(new Hit(item.item(), score)));
        }
        return hits.stream()
                .sorted(Comparator.comparingInt(Hit::score)
                        .reversed()
                        .thenComparing(
                                Comparator.comparingLong((Hit h) -> h.item().at())
                                        .reversed())
                        .thenComparing(h -> h.item().kind())
                        .thenComparing(h -> h.item().id()))
                .limit(MOST)
                .map(Hit::item)
                .toList();
    }

    /** Empty unless each word fits. */
    private static Optional<Integer> score(Indexed item, List<String> wanted) {
        int sum = 0;
        for (String word : wanted) {
            int best = Math.max(2 * best(word, item.title()), best(word, item.text()));
            if (best == 0) {
                return Optional.empty();
            }
            sum += best;
        }
        boolean all = item.title().equals(wanted);
        return Optional.of(sum + (all ? WHOLE : 0));
    }

    private static int best(String wanted, List<String> words) {
        return words.stream().mapToInt(word -> fit(wanted, word)).max().orElse(0);
    }

    /** 0 when it does not fit. A figure must be whole or a beginning: one off is another thing. */
    static int fit(String wanted, String word) {
        if (word.equals(wanted)) {
            return WHOLE;
        }
        if (wanted.chars().anyMatch(Character::isDigit)) {
            return isTag(wanted) || !word.startsWith(wanted) ? 0 : BEGINNING;
        }
        if (word.startsWith(wanted)) {
            return BEGINNING;
        }
        if (wanted.length() >= INSIDE_FROM && word.contains(wanted)) {
            return INSIDE;
        }
        return wanted.length() >= LONG_ENOUGH && isOneOff(wanted, word) ? NEARLY : 0;
    }

    /** a3 is not the beginning of a31. */
    private static boolean isTag(String wanted) {
        return wanted.matches("\\p{L}{1,3}\\d+");
    }

    /** One letter more, one less, or another. */
    static boolean isOneOff(String one, String other) {
        String small = one.length() <= other.length() ? one : other;
        String large = one.length() <= other.length() ? other : one;
        if (large.length() - small.length() > 1) {
            return false;
        }
        int at = 0;
        while (at < small.length() && small.charAt(at) == large.charAt(at)) {
            at++;
        }
        int next = small.length() == large.length() ? at + 1 : at;
        return small.substring(Math.min(next, small.length()))
                .equals(large.substring(Math.min(at + 1, large.length())));
    }
}
