package org.skeinday.review.web;

import java.util.List;
import org.skeinday.bench.web.BreakQuestion;
import org.skeinday.bench.web.WindQuestion;

/**
 * What waits for a word: flights that are undecided, numbers that were offered or doubted, winds and breaks.
 *
 * @param summary how many, in words; empty when none waits
 * @param action where the forms go
 * @param winds of which something is asked
 * @param breaks that wait for the coach
 * @param coach whether the coach looks
 * @param said what the last word did, empty when none was just said
 * @param problem why the last word was not taken, empty when it was
 */
public record OpenQuestionsView(
        String summary,
        String action,
        List<Item> items,
        List<WindQuestion> winds,
        List<BreakQuestion> breaks,
        boolean coach,
        String said,
        String problem) {
    /** Nothing waits. */
    static final OpenQuestionsView NONE = new OpenQuestionsView("", "", List.of(), List.of(), List.of(), false, "", "");

    /** The same, with what the last word did or why it was not taken. */
    OpenQuestionsView said(String did, String why) {
        return new OpenQuestionsView(summary, action, items, winds, breaks, coach, did, why);
    }

    /** Where a form about something else than a flight goes, with what is looked at. */
    public String action(String of) {
        return action.replace("/evening/word", "/evening/" + of);
    }

    /** Whether anything waits. */
    public boolean any() {
        return !items.isEmpty() || !winds.isEmpty() || !breaks.isEmpty();
    }

    /**
     * One flight.
     *
     * @param title when it was flown, with which motor and how long
     * @param undecided what it touched, empty when it is decided
     * @param seen how it is judged
     */
    public record Item(
            String flight, String title, String address, String undecided, String seen, List<Told> numbers) {}

    /**
     * Numbers that one word confirms.
     *
     * @param values as a form sends them back, for example {@code launch-torque=3.5}
     * @param words what they are and why they wait
     */
    public record Told(List<String> values, String words) {}
}
