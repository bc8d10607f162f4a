package org.skeinday.steps;

import java.util.List;
import java.util.Optional;

/**
 * Somebody goes on with a list that was left.
 *
 * @param lastDone the item that was ticked last; empty when only skips were tapped
 * @param awayMs since the last tap
 * @param askAgain critical items that were done: each is to be reopened ({@link Reopened}) with {@link #reason}
 * @param byAnother whether another person or device goes on
 */
public record Resumption(Optional<Step> lastDone, long awayMs, List<Step> askAgain, boolean byAnother) {
    public Resumption {
        askAgain = List.copyOf(askAgain);
    }

    /** For the top of the list: where it stopped and how long ago. */
    public String text() {
        return lastDone.map(step -> "Last done: " + step.text() + ".").orElse("Nothing done yet.") + " Away for "
                + awayWords() + "." + (askAgain.isEmpty() ? "" : " Critical items are asked again.");
    }

    /** Why an item is asked again. */
    public String reason() {
        return byAnother ? "another person goes on after " + awayWords() : "interrupted for " + awayWords();
    }

    private String awayWords() {
        return awayMs < 60_000 ? awayMs / 1000 + " s" : awayMs / 60_000 + " min";
    }
}
