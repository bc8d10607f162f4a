package org.skeinday.bench.web;

import java.util.List;
import org.skeinday.motor.BreakCause;

/**
 * A break that waits for the coach's word.
 *
 * @param motor its id
 * @param title which motor, at how many turns, and what it counts as so far
 * @param asked what is asked about its numbers, empty for nothing
 * @param cause word of what it counts as, empty while nobody has looked
 * @param seen how the form shows it, for the server to see whether that still stands
 * @param step id of the break, for who finds that there was none
 * @param judged whether the coach has said what it was, so that only its numbers wait
 */
public record BreakQuestion(
        String motor, String title, String asked, String cause, String seen, String step, boolean judged) {
    public List<BreakCause> causes() {
        return List.of(BreakCause.values());
    }
}
