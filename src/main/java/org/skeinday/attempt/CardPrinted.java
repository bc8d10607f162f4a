package org.skeinday.attempt;

import java.util.List;

/**
 * Fact {@code card.printed}: an attempt card went to paper with these lines, in place of what was printed before for the same
 * attempt.
 *
 * @param entryId id of the entry
 * @param rule which attempt of the rules it is for, from 1
 * @param atMs when, milliseconds since 1970 UTC
 * @param lines what it shows in metric units, with ids in the place of names
 */
public record CardPrinted(String entryId, int rule, long atMs, List<Line> lines) {
    public static final int MOST_LINES = 60;
    public static final int LONGEST_LABEL = 60;
    public static final int LONGEST_VALUE = 400;

    public CardPrinted {
        lines = List.copyOf(lines);
    }

    /** @param label as the card has it @param shown empty where the card leaves room */
    public record Line(String label, String shown) {}
}
