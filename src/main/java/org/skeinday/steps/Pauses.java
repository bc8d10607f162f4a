package org.skeinday.steps;

import java.time.Duration;

/**
 * The waiting times of a walk through a list.
 *
 * @param undo how long a tap can be taken back
 * @param again after so long an interruption critical items are asked again
 * @param together people who tick within this time of each other are on the list together, nobody has gone away (own
 *     default: 1 min)
 */
public record Pauses(Duration undo, Duration again, Duration together) {
    public Pauses {
        if (undo.isNegative() || together.isNegative() || again.compareTo(together) < 0) {
            throw new IllegalArgumentException("Pauses must not be negative, and to ask again not before " + together
                    + ", but were " + undo + " and " + again);
        }
    }

    /** With the program's time to undo: asked again after 5 min. */
    public static Pauses usual(Duration undo) {
        return new Pauses(undo, Duration.ofMinutes(5), Duration.ofMinutes(1));
    }

    /** Whether {@code undoing} comes in time; both ends of the span belong to it. */
    boolean inTime(RunFact undone, RunFact undoing) {
        long after = undoing.atMs() - undone.atMs();
        return after >= 0 && after <= undo.toMillis();
    }
}
