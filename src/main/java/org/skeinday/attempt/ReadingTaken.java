package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.reading}: one time of one flight as one timekeeper measured it.
 *
 * @param slot which timekeeper, 1 to 3
 * @param instrument watch (a hand watch, typed in) or device (this program's stopwatch)
 * @param personId who timed, null when nobody was named
 * @param durationMs release to landing, milliseconds
 * @param atMs when it came in, milliseconds since 1970 by the server's clock; null in records made before this was kept
 * @param corrects id of an earlier reading of the same timekeeper that this one stands in place of, else null
 * @param takenBack whether its timekeeper said that it was a mistake; null for no
 * @param partial whether its watch was taken over in the air, so that it saw the landing only; null for no
 */
public record ReadingTaken(
        String id,
        String attemptId,
        int slot,
        String instrument,
        @Nullable String personId,
        long durationMs,
        @Nullable Long atMs,
        @Nullable String corrects,
        @Nullable Boolean takenBack,
        @Nullable Boolean partial) {
    /** Longest flight that is no slip of the keys: 2 hours. */
    public static final long LONGEST_MS = 2 * 60 * 60 * 1000;

    /** A watch in a hand, whose time was typed in. */
    public static final String HAND_WATCH = "watch";

    public static final List<String> INSTRUMENTS = List.of(HAND_WATCH, "device");

    public ReadingTaken {
        Preconditions.within("A timekeeper's place", slot, 1, 3);
        Preconditions.oneOf("An instrument", instrument, INSTRUMENTS);
        Preconditions.zeroOrMore("A time", durationMs, "ms");
    }

    /** Whether it saw the landing only: then it counts when a person says so, and never by itself. */
    public boolean isPartial() {
        return Boolean.TRUE.equals(partial);
    }

    /** Whether it was tapped on this program's watch, and not typed. */
    public boolean wasTapped() {
        return !instrument.equals(HAND_WATCH);
    }
}
