package org.skeinday.steps;

import org.skeinday.units.Preconditions;

/**
 * One item of a list.
 *
 * @param id the same through all revisions while the item means the same, at most 80 characters
 * @param text short and spoken, at most 120 characters
 * @param reason why, at most 300 characters
 * @param critical cannot be skipped
 */
public record Step(String id, String text, String reason, boolean critical, ItemAnswer answer) {
    /** Before winding, for which nobody can answer: {@link Gate} looks for them by name. */
    public static final String EYES = "eye-protection";

    /** Nobody but the winder in line with the motor: asked last, since people move. */
    public static final String LINE = "line";

    /** As the program brings it. */
    static Step line() {
        return new Step(
                LINE,
                "Nobody but the winder in line, face beside it and not behind",
                "A motor that parts flies past its ends.",
                true,
                ItemAnswer.OK);
    }

    public Step {
        Preconditions.filled("An item's id", id);
        Preconditions.within("The length of an item's id", id.length(), 1, 80);
        Preconditions.filled("An item's text", text);
        Preconditions.filled("The reason of '" + text + "'", reason);
        Preconditions.within("The length of an item's text", text.length(), 1, 120);
        Preconditions.within("The length of an item's reason", reason.length(), 1, 300);
    }

    /** Whether it is seen to and ticked, whoever answers for the rest. */
    public boolean hasNoOverride() {
        return id.equals(EYES) || id.equals(LINE);
    }
}
