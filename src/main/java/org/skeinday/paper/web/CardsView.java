package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.paper.AttemptCard;
import org.skeinday.steps.Caution;

/**
 * Cards to print.
 *
 * @param asOf the moment that the cards are of, in words
 * @param none why there is none, empty when there are some
 * @param cautions at the foot of each card, with their reason
 * @param onPaper the cards that were printed last
 * @param wrong why nothing was noted as printed; empty when it was, or nobody asked
 * @param prints whether the record has just noted that these cards are printed: the page prints them
 */
public record CardsView(
        List<AttemptCard> cards,
        List<String> rules,
        String asOf,
        String none,
        List<Caution> cautions,
        List<Printed> onPaper,
        String wrong,
        boolean prints) {
    /**
     * One card on paper.
     *
     * @param title entry and attempt
     * @param at when it was printed, in words
     * @param changed what has changed since; empty while the paper is right
     */
    public record Printed(String title, String at, List<String> changed) {
        public boolean isOutOfDate() {
            return !changed.isEmpty();
        }
    }

    /** Printed anew they would be others. */
    public long outOfDate() {
        return onPaper.stream().filter(Printed::isOutOfDate).count();
    }
}
