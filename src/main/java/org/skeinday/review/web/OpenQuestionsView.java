package org.skeinday.review.web;

import java.util.List;

/**
 * Flights that wait for a word: undecided ones, and numbers that were offered or doubted.
 *
 * @param summary how many, in words; empty when none waits
 * @param action where the forms go
 * @param said what the last word did, empty when none was just said
 * @param problem why the last word was not taken, empty when it was
 */
public record OpenQuestionsView(String summary, String action, List<Item> items, String said, String problem) {
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
