package org.skeinday.attempt.web;

import java.util.List;

/**
 * Who flies when, in finished words.
 *
 * @param finding who is next
 * @param about what the order is made of
 * @param toCome who can still fly, in turn
 * @param over who cannot any more: flown out, or the window has closed
 */
public record OrderView(String finding, String about, List<Turn> toCome, List<Turn> over) {
    /**
     * One entry.
     *
     * @param when the window's hours; empty without one
     * @param state what it does now, or which attempt is next
     * @param flies whether it is called just now
     */
    public record Turn(String when, String entry, String team, String state, boolean flies) {}
}
