package org.skeinday.contest;

import org.jspecify.annotations.Nullable;

/**
 * Fact {@code window.moved}: why a window was moved after a flight was official. It changes no verdict. Moments are ms since
 * 1970 UTC.
 *
 * @param entryId null for the window of all
 */
public record WindowMoved(
        String id,
        String eventId,
        @Nullable String entryId,
        long atMs,
        @Nullable String personId,
        String reason,
        long opensBeforeMs,
        long closesBeforeMs,
        long opensAtMs,
        long closesAtMs) {}
