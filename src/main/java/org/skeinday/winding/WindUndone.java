package org.skeinday.winding;

import java.util.Optional;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.undone}: a tap was a slip of the hand and is taken back. It stays in the record; nothing reads it any
 * more.
 *
 * @param tapId of a needle mark, a step of winding, a floor mark, or the wind itself for its first crank turn
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 */
public record WindUndone(String windId, String tapId, long atMs, String device) {
    /** Own default: so long after a tap it can be undone. */
    public static final long WITHIN_MS = 10_000;
    /** The key is there for ten seconds; the finger and its answer take their time (own default). */
    private static final long GRACE_MS = 2_000;

    public WindUndone {
        Preconditions.filled("The wind", windId);
        Preconditions.filled("The tap", tapId);
        Preconditions.filled("The device", device);
    }

    /** Why it is too late; empty while it is not. Both in ms since the first crank turn. */
    public static Optional<String> tooLate(long tappedMs, long undoneMs) {
        long after = undoneMs - tappedMs;
        return after <= WITHIN_MS + GRACE_MS
                ? Optional.empty()
                : Optional.of("A tap can be undone for " + WITHIN_MS / 1000 + " s; this one is " + after / 1000
                        + " s old. Set the meter, or say what is so now");
    }
}
