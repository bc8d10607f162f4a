package org.skeinday.attempt.web;

import java.util.List;

/**
 * Results for a screen that the hall sees: no names of helpers, no advice, nothing to press.
 *
 * @param standing whether the result is final, in words; empty where the officials elsewhere make it
 * @param then words of the one that comes after, and its window
 * @param changed when the rules were changed last, and why; empty where they were not after the first official flight
 * @param last the official time that was taken last, in words; empty for none
 */
public record WallView(
        String title,
        Head head,
        String then,
        WindowClock thenWindow,
        String last,
        List<Integer> numbers,
        List<ResultView.Row> rows,
        String scoreWords,
        boolean provisional,
        String standing,
        String changed) {
    /**
     * Whom the hall looks at.
     *
     * @param says what they do, and in which attempt; empty for nobody
     * @param whose the entry
     * @param sinceMs epoch ms that the flight's clock counts up from; 0 for no flight in the air
     * @param window where no flight is in the air
     * @param stopped whether the hall stands still
     */
    public record Head(String says, String whose, long sinceMs, WindowClock window, boolean stopped) {}
}
