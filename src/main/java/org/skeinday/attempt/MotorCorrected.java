package org.skeinday.attempt;

import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.motor-corrected}: an attempt was flown with another motor than the record had. Its uses, its fits and
 * its figures are of that one from then on.
 *
 * @param motorId that was flown
 * @param beforeId that the record had; null for none
 * @param reason in words, shown and never read
 * @param atMs by the server's clock, milliseconds since 1970 UTC
 */
public record MotorCorrected(
        String id,
        String attemptId,
        String motorId,
        @Nullable String beforeId,
        String reason,
        long atMs,
        @Nullable String personId,
        String device) {
    public MotorCorrected {
        Preconditions.filled("The attempt", attemptId);
        Preconditions.filled("The motor", motorId);
        Preconditions.filled("The reason", reason);
    }
}
