package org.skeinday.timing;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * How the watches of one flight become its official time.
 *
 * @param ifTwo what to take when MIDDLE has just two watches; null when the rules do not say
 * @param stepMs 1 to 60,000 ms: the step that the official time is rounded to
 * @param roundWatchesFirst round each watch, then reduce (a mean is rounded once more)
 */
public record TimeRule(Take take, @Nullable Take ifTwo, Rounding rounding, long stepMs, boolean roundWatchesFirst) {
    public TimeRule {
        if (ifTwo == Take.MIDDLE) {
            throw new IllegalArgumentException(
                    "What is taken of two watches must be longer, shorter or mean, but was middle, which they do not have");
        }
        Preconditions.within("The step", stepMs, 1, 60_000, "ms");
    }

    /** Decimals that a time of this step needs: 1 for 0.1 s, 0 for whole seconds. */
    public int decimals() {
        return decimals(stepMs);
    }

    /** Decimals of seconds that a time of this step in ms needs. */
    public static int decimals(long stepMs) {
        return stepMs % 1000 == 0 ? 0 : stepMs % 100 == 0 ? 1 : stepMs % 10 == 0 ? 2 : 3;
    }
}
