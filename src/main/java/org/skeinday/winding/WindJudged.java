package org.skeinday.winding;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code wind.judged}: a person has left a wind out of averages and fits, or taken it in again; a later one stands in
 * place of it.
 *
 * @param reason why it is left out, null when it is taken in
 * @param personId null where the device has none
 * @param atMs by the server's clock, ms since 1970 UTC
 */
public record WindJudged(
        String windId, @Nullable String reason, @Nullable String personId, long atMs) {
    public WindJudged {
        Preconditions.filled("The wind", windId);
        if (reason != null && reason.isBlank()) {
            throw new IllegalArgumentException("A wind that is left out must have a reason, but had none");
        }
    }
}
