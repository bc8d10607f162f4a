package org.skeinday.standing;

import org.skeinday.units.Preconditions;

/**
 * After a collision of two models each entry keeps its time or flies again.
 *
 * @param limitMs how long it may choose, from when it was told, 1 to 3,600,000 ms
 * @param ifSilent what holds when it chose nothing
 */
public record CollisionRule(long limitMs, Choice ifSilent) {
    /** What an entry may choose: FAI Sporting Code Section 4 F1, 3.4.3–3.4.9 (older edition). */
    public enum Choice {
        KEEP("keeps its time"),
        AGAIN("flies again");

        private final String words;

        Choice(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** Own default, no source: a minute, and the time is kept. */
    public static final CollisionRule ONE_MINUTE = new CollisionRule(60_000, Choice.KEEP);

    public CollisionRule {
        Preconditions.within("The limit", limitMs, 1, 3_600_000, "ms");
    }
}
