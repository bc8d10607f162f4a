package org.skeinday.steps;

/**
 * One item of a list.
 *
 * @param id the same through all revisions while the item means the same
 * @param text short and spoken, at most 120 characters
 * @param reason why, at most 300 characters
 * @param critical cannot be skipped
 */
public record Step(String id, String text, String reason, boolean critical, Answer answer) {
    /** The one item that the gate looks for by name. */
    public static final String EYES = "eye-protection";

    public Step {
        Must.beFilled("An item's id", id);
        Must.beFilled("An item's text", text);
        Must.beFilled("The reason of '" + text + "'", reason);
        Must.beWithin("The length of an item's text", text.length(), 1, 120);
        Must.beWithin("The length of an item's reason", reason.length(), 1, 300);
    }
}
