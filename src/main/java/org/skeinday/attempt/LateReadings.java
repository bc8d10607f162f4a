package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Readings that came in after the time of their attempt was official: evidence that changed nothing. */
public final class LateReadings {
    private LateReadings() {}

    public static boolean isLate(ReadingTaken reading, AttemptNow attempt) {
        return isLate(reading, attempt.state().word(), attempt.closedAtMs());
    }

    /** Those that were there. @param state word of the attempt's {@link State} @param closedAtMs null while it is open */
    public static List<ReadingTaken> without(
            List<ReadingTaken> readings, @Nullable String state, @Nullable Long closedAtMs) {
        return readings.stream()
                .filter(reading -> !isLate(reading, state, closedAtMs))
                .toList();
    }

    /** The same of an attempt that is known. */
    public static List<ReadingTaken> without(List<ReadingTaken> readings, AttemptNow attempt) {
        return without(readings, attempt.state().word(), attempt.closedAtMs());
    }

    private static boolean isLate(ReadingTaken reading, @Nullable String state, @Nullable Long closedAtMs) {
        Long at = reading.atMs();
        return closedAtMs != null
                && at != null
                && at > closedAtMs
                && State.CLOSED.word().equals(state);
    }
}
