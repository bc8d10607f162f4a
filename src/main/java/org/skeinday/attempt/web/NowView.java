package org.skeinday.attempt.web;

import java.util.List;

/**
 * The captain's page in finished words.
 *
 * @param message why the last deed was refused, empty when it was not
 * @param card the next attempt, null when none is left
 */
public record NowView(
        String event,
        String rules,
        String message,
        @org.jspecify.annotations.Nullable Card card,
        List<EntryLine> entries,
        boolean mayAct) {

    /** Label and value. */
    public record Line(String label, String value) {}

    /** A motor to choose. */
    public record Choice(String id, String words) {}

    /** A button: a form that sends one act. */
    public record Deed(String address, String act, String word, String to) {}

    /**
     * The next attempt.
     *
     * @param until epoch ms that the clock counts down to, 0 for no clock
     */
    public record Card(
            String title,
            String state,
            String clockLabel,
            long until,
            String entry,
            String attempt,
            List<Line> lines,
            List<String> warnings,
            List<Choice> models,
            List<Choice> motors,
            List<Deed> deeds,
            String callAct,
            String giveUpAct) {}

    /** One entry's day so far. */
    public record EntryLine(
            String name, String team, String window, String attempts, String state, String entry, String callAct) {}
}
