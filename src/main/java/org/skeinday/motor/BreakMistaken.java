package org.skeinday.motor;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code motor.break-mistaken}: somebody found that a motor had not broken after all. The break itself is taken back
 * beside; who said why stays in the record.
 *
 * @param id of the break that was none
 * @param reason in words, shown and never read
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 */
public record BreakMistaken(
        String id,
        String motorId,
        String reason,
        long atMs,
        @Nullable String personId,
        String device) {
    public BreakMistaken {
        Preconditions.filled("The break", id);
        Preconditions.filled("The motor", motorId);
        Preconditions.filled("The reason", reason);
    }
}
