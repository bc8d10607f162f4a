package org.skeinday.attempt;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.FlightTime;

/**
 * One flight, official or at practice, with what was counted of its wind; null where nobody counted.
 *
 * @param id of the attempt or of the practice flight
 * @param atMs of the release, else of the call, in ms since 1970 UTC
 * @param ratio motor turns per crank turn
 * @param remainingCrankTurns left after the landing
 * @param timeMs official, else by our own watch
 * @param judged whether somebody said what it says of model and motor; valid until then
 */
public record Flight(
        String id,
        boolean isAttempt,
        @Nullable String modelId,
        @Nullable String motorId,
        long atMs,
        double ratio,
        @Nullable Double stopCrankTurns,
        @Nullable Double backOffCrankTurns,
        @Nullable Double remainingCrankTurns,
        @Nullable Double launchTorqueNmm,
        @Nullable Long timeMs,
        boolean judged,
        Validity validity) {
    /** Null while stop or back-off is not known. */
    public @Nullable Double launchCrankTurns() {
        return stopCrankTurns == null || backOffCrankTurns == null ? null : stopCrankTurns - backOffCrankTurns;
    }

    /** Empty while turns or time are not known, or where they cannot be. */
    public Optional<FlightFigures> figures() {
        if (stopCrankTurns == null
                || backOffCrankTurns == null
                || remainingCrankTurns == null
                || timeMs == null
                || timeMs == 0
                || stopCrankTurns - backOffCrankTurns - remainingCrankTurns < 0) {
            return Optional.empty();
        }
        return Optional.of(new FlightFigures(
                stopCrankTurns, backOffCrankTurns, remainingCrankTurns, ratio, new FlightTime(timeMs)));
    }
}
