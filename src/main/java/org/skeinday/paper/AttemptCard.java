package org.skeinday.paper;

import java.util.List;

/**
 * One card for one attempt, in finished words.
 *
 * @param entry id of the entry
 * @param rule which attempt of the rules it is for, from 1
 * @param lines what is known before, label and value
 * @param marks five floor marks: crank turns and where to stand
 * @param blanks what is written on it
 * @param phases through which the attempt goes, each with room for its time
 */
public record AttemptCard(
        String entry,
        int rule,
        String title,
        String event,
        String direction,
        List<Line> lines,
        List<Line> marks,
        List<String> blanks,
        List<String> phases) {
    /** Label and value. */
    public record Line(String label, String value) {}
}
