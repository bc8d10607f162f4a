package org.skeinday.paper.web;

import java.util.List;

/**
 * Cards for the timekeepers and the host of a hosted day: of every entry, whoever's it is.
 *
 * @param event name and day
 * @param rules by which is timed, as a sentence
 * @param none why there is no card; empty when there are some
 * @param asOf the moment that the cards are of, in words
 * @param watches as many as the rules ask for
 */
public record HostCardsView(
        String event, String rules, String none, String asOf, List<Integer> watches, List<Card> cards) {
    /**
     * One attempt that is still to be flown.
     *
     * @param title entry and attempt
     * @param of its team, and its division where it has one
     * @param window from when to when, in words
     */
    public record Card(String title, String of, String window) {}
}
