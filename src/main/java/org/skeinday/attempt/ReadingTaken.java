package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.reading}: one time of one flight as one timekeeper measured it.
 *
 * @param slot which timekeeper, 1 to 3
 * @param instrument watch (a hand watch, typed in) or device (this program's stopwatch)
 * @param personId who timed, null when nobody was named
 * @param durationMs release to landing, milliseconds
 */
public record ReadingTaken(
        String id,
        String attemptId,
        int slot,
        String instrument,
        @Nullable String personId,
        long durationMs) {
    public static final List<String> INSTRUMENTS = List.of("watch", "device");

    public ReadingTaken {
        if (slot < 1 || slot > 3) {
            throw new IllegalArgumentException("A timekeeper's place must be 1 to 3, but was " + slot);
        }
        if (!INSTRUMENTS.contains(instrument)) {
            throw new IllegalArgumentException("An instrument must be watch or device, but was '" + instrument + "'");
        }
        if (durationMs < 0) {
            throw new IllegalArgumentException("A time must be zero or more, but was " + durationMs + " ms");
        }
    }
}
