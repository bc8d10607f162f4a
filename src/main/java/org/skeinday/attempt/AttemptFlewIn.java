package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code attempt.flew-in}: the window that a release is judged by, as it stood then. A window that is added or changed
 * later changes none of it. Without this fact, in records made before it was kept, the window of the moment was taken.
 *
 * @param opensMs ms since 1970 UTC; null where the entry had no window
 * @param closesMs the same
 */
public record AttemptFlewIn(
        String attemptId, @Nullable Long opensMs, @Nullable Long closesMs) {}
