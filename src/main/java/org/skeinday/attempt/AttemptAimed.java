package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.aimed}: what is wanted of an attempt's wind; a later one stands in place of it. Null where nothing
 * was typed.
 *
 * @param launchNmm torque wanted after the back-off, in N·mm, above 0; {@code launchTyped} as it was typed
 * @param ceilingNmm torque at which winding ends, in N·mm, above 0, where it is not to come from break tests
 */
public record AttemptAimed(
        String attemptId,
        @Nullable Double launchNmm,
        @Nullable String launchTyped,
        @Nullable Double ceilingNmm,
        @Nullable String ceilingTyped) {
    public AttemptAimed {
        above0("The launch torque wanted", launchNmm);
        above0("The torque limit", ceilingNmm);
        if (launchNmm != null && ceilingNmm != null && launchNmm > ceilingNmm) {
            throw new IllegalArgumentException(
                    "The launch torque wanted must not be above the torque limit, but they were " + launchTyped
                            + " and " + ceilingTyped);
        }
    }

    private static void above0(String what, @Nullable Double nmm) {
        if (nmm != null) {
            Preconditions.above(what, nmm, 0, "N·mm");
        }
    }

    /** Nothing wanted yet. */
    public static AttemptAimed nothing(String attemptId) {
        return new AttemptAimed(attemptId, null, null, null, null);
    }

    /** The same for a later attempt: what was wanted last is wanted again until somebody says otherwise. */
    public AttemptAimed of(String attempt) {
        return new AttemptAimed(attempt, launchNmm, launchTyped, ceilingNmm, ceilingTyped);
    }
}
