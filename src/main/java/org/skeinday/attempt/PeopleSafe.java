package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;

/** Fact {@code attempt.people-safe}: after this motor broke everyone is unhurt and both ends are found. */
public record PeopleSafe(
        String attemptId,
        String motorId,
        long atMs,
        @Nullable String personId,
        String device) {}
