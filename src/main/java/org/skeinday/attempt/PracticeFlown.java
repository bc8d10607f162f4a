package org.skeinday.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.WhatCounts;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code flight.flown}: one flight outside any attempt.
 *
 * @param flownAtMs milliseconds since 1970 UTC
 * @param crankTurns wound, before back-off
 * @param winderRatio motor turns to one crank turn
 * @param stopTorqueNmm when winding stopped, as typed in {@code stopTorqueTyped}
 * @param launchTorqueNmm when the motor left the meter, as typed in {@code launchTorqueTyped}
 * @param backOffCrankTurns taken off again, may be a fraction
 * @param durationMs release to landing
 * @param remainingCrankTurns counted when the motor was run back, may be a fraction
 * @param valid whether it may enter averages, fits and forecasts; if not, {@code invalidReason} says why
 */
public record PracticeFlown(
        String id,
        String eventId,
        @Nullable String modelId,
        String motorId,
        long flownAtMs,
        @Nullable Integer crankTurns,
        double winderRatio,
        @Nullable Double stopTorqueNmm,
        @Nullable String stopTorqueTyped,
        @Nullable Double launchTorqueNmm,
        @Nullable String launchTorqueTyped,
        @Nullable Double backOffCrankTurns,
        long durationMs,
        @Nullable Double remainingCrankTurns,
        @Nullable String note,
        boolean valid,
        @Nullable String invalidReason) {
    public PracticeFlown {
        Preconditions.zeroOrMore("A time", durationMs, "ms");
        if (!valid && (invalidReason == null || invalidReason.isBlank())) {
            throw new IllegalArgumentException(
                    "A flight that is not valid for analysis must have a reason, but had none");
        }
    }

    /** As a flight like any other. @param marks of its numbers */
    public Flight flight(ValueMarks marks) {
        return new Flight(
                id,
                false,
                modelId,
                motorId,
                flownAtMs,
                winderRatio,
                crankTurns == null ? null : (Double) crankTurns.doubleValue(),
                backOffCrankTurns,
                remainingCrankTurns,
                stopTorqueNmm,
                launchTorqueNmm,
                durationMs,
                worth(marks));
    }

    /** As evidence: whoever logged it has said whether it counts. */
    private FlightEvidence worth(ValueMarks marks) {
        String reason = valid || invalidReason == null ? "" : invalidReason;
        return new FlightEvidence(true, WhatCounts.flight(true, reason, "", ""), null, marks, List.of());
    }

    /** The same left out, with its reason. */
    public PracticeFlown leftOut(String reason) {
        return judged(false, reason);
    }

    /** The same taken in. */
    public PracticeFlown takenIn() {
        return judged(true, null);
    }

    private PracticeFlown judged(boolean counts, @Nullable String reason) {
        return new PracticeFlown(
                id,
                eventId,
                modelId,
                motorId,
                flownAtMs,
                crankTurns,
                winderRatio,
                stopTorqueNmm,
                stopTorqueTyped,
                launchTorqueNmm,
                launchTorqueTyped,
                backOffCrankTurns,
                durationMs,
                remainingCrankTurns,
                note,
                counts,
                reason);
    }
}
