package org.skeinday.steps;

import org.skeinday.units.Preconditions;

/**
 * One item of a list.
 *
 * @param id the same through all revisions while the item means the same
 * @param text short and spoken, at most 120 characters
 * @param reason why, at most 300 characters
 * @param critical cannot be skipped
 */
public record Step(String id, String text, String reason, boolean critical, ItemAnswer answer) {
    /** The one item that the gate looks for by name. */
    public static final String EYES = "eye-protection";

    public Step {
        Preconditions.filled("An item's id", id);
        Preconditions.filled("An item's text", text);
        Preconditions.filled("The reason of '" + text + "'", reason);
        Preconditions.within("The length of an item's text", text.length(), 1, 120);
        Preconditions.within("The length of an item's reason", reason.length(), 1, 300);
    }
}
