package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code watch.taken}: one device times this attempt in this place, 1 to 3, from now on instead of any other.
 *
 * @param takenMs since when, by the server's clock, epoch ms; what a device had before another took it over and it took it
 *     back, it has had all the time; null in records made before this was kept
 * @param allowed why the chief lets somebody time their own team; null where nobody had to
 */
public record WatchTaken(
        String attemptId,
        int slot,
        String device,
        String personId,
        @Nullable Long takenMs,
        @Nullable String allowed) {
    /** Within this the release of a moment that nobody pressed for may be told: a second of people (own default). */
    private static final long SOON_MS = 1_000;

    /** Whether its timekeeper cannot have pressed for this release: the model was in the air. @param releasedMs null for none */
    public boolean isSince(@Nullable Long releasedMs) {
        return takenMs != null && releasedMs != null && takenMs > releasedMs + SOON_MS;
    }
}
