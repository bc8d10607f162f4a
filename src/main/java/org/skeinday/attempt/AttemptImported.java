package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code attempt.imported}: an attempt as a file tells it. Times of day are milliseconds since 1970 UTC, null for
 * steps that were not reached or not noted.
 *
 * @param state planned, called, winding, holding, released, landed, closed, scrubbed or void
 * @param stopCountCrankTurns crank turns when winding stopped
 * @param launchTorqueNmm torque when the motor left the meter, as typed in {@code launchTorqueTyped}
 * @param officialMs official time in milliseconds
 * @param flownAgain whether a void one is flown again and uses up nothing; null for no
 */
public record AttemptImported(
        String id,
        String eventId,
        String entryId,
        int number,
        @Nullable String modelId,
        @Nullable String motorId,
        String state,
        @Nullable Long calledAtMs,
        @Nullable Long windingAtMs,
        @Nullable Long holdingAtMs,
        @Nullable Long releasedAtMs,
        @Nullable Long landedAtMs,
        @Nullable Long closedAtMs,
        @Nullable Integer stopCountCrankTurns,
        @Nullable Double launchTorqueNmm,
        @Nullable String launchTorqueTyped,
        @Nullable Long officialMs,
        @Nullable String voidReason,
        @Nullable Boolean flownAgain) {
    public static final List<String> STATES = EnumWords.of(State.class);

    public AttemptImported {
        Preconditions.atLeast("An attempt's number", number, 1);
        Preconditions.oneOf("An attempt's state", state, STATES);
    }
}
